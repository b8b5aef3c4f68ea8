import { bounded, type Bounded, rational, type Rational } from "../exact/index.js";
import { angleOf, checkAbove, checkTeeth, refuse } from "./check.js";
import { angleAt, involute } from "./involute.js";
import { enclose } from "./measure.js";

/** One gear as it is measured. Its module in millimetres, angles in degrees, shift and addendum in modules. */
export interface GaugedGear {
  readonly teeth: number;
  readonly module: Rational;
  /** 20 where it is not given. */
  readonly pressureAngle?: Rational;
  /** None where it is not given. */
  readonly shift?: Bounded;
  /** How high the teeth stand over the reference circle, without shift: 1 for full depth, 0.8 for stub teeth. */
  readonly addendum?: Rational;
}

function angleIn({ pressureAngle = rational(20) }: GaugedGear): number {
  const degrees = angleOf(pressureAngle.toFraction(), 0, 45, "pressureAngle").toNumber();
  if (!degrees) refuse("out-of-range", "pressureAngle", 0, "more than 0 and up to 45 degrees");
  return (degrees * Math.PI) / 180;
}

function check(gear: GaugedGear): GaugedGear {
  checkTeeth(gear.teeth);
  checkAbove(gear.module, "module");
  return gear;
}

/**
 * The diameter over the tips: m (z + 2 h + 2 x), with h = 1 for full-depth teeth and 0.8 for stub teeth.
 *
 * @example
 * tipDiameter({ teeth: 20, module: rational("0.8") }).low.toFraction(); // => "88/5"
 */
export function tipDiameter(gear: GaugedGear): Bounded {
  const { teeth, module, shift = bounded(0), addendum = rational(1) } = check(gear);
  const tip = shift.plus(addendum).times(2).plus(teeth).times(module);
  return tip.high.sign > 0 ? tip : refuse("tooth-missing", "shift", `tips across ${tip.high.toNumber()} mm`, "teeth");
}

/**
 * How much of the diameter the jaws of a calliper read: all of it over an even count of teeth. Over an odd count a tip stands
 * opposite a space: (1 + cos 180°/z) / 2 with pointed tips, a little more with flat ones, whose corners stand nearer to the far
 * side by half their angle.
 *
 * @example
 * tipDiameter({ teeth: 15, module: rational(1) }).times(jawShare({ teeth: 15, module: rational(1) })).low.toDecimal(); // => "16.814"
 */
export function jawShare(gear: GaugedGear): Bounded {
  const { teeth, module, shift = bounded(0) } = check(gear);
  if (teeth % 2 === 0) return bounded(1);
  const tip = tipDiameter(gear);
  const step = Math.PI / teeth;
  const angle = angleIn(gear);
  /** Half the angle of a tip. Thinner teeth have narrower ones, down to a point. */
  const halfTip = (diameter: Rational, shifted: Rational): number => {
    const half = (Math.PI / 2 + 2 * shifted.toNumber() * Math.tan(angle)) / teeth;
    const lean = involute(angle) - involute(angleAt(module.toNumber() * teeth * Math.cos(angle), diameter.toNumber()));
    return Math.min(step, Math.max(0, half + lean));
  };
  const flattest = Math.max(halfTip(tip.low, shift.low), halfTip(tip.high, shift.high));
  const share = (half: number): Bounded => enclose((1 + Math.cos(step - half)) / 2);
  return bounded(share(0).low, share(flattest).high);
}

/**
 * How many teeth a calliper takes between its jaws so that they touch near the middle of the flanks: k ≈ z α / 180° + ½.
 *
 * @example
 * spanTeeth(38, 20); // => 5
 */
export function spanTeeth(teeth: number, pressureAngle: number): number {
  return Math.max(1, Math.round((checkTeeth(teeth) * pressureAngle) / 180 + 0.5));
}

/**
 * The base tangent length over k teeth: Wk = m cos α (π (k − ½) + z inv α) + 2 x m sin α (ISO 21771-1). It reads the flanks, which
 * wear less than the tips.
 *
 * @example
 * spanLength({ teeth: 22, module: rational("0.5") }, 3).low.toDecimal(); // => "3.844"
 */
export function spanLength(gear: GaugedGear, spanned: number): Bounded {
  const { teeth, module, shift = bounded(0) } = check(gear);
  checkTeeth(spanned, "span");
  const angle = angleIn(gear);
  const modules = enclose(Math.cos(angle) * (Math.PI * (spanned - 0.5) + teeth * involute(angle)));
  return modules.plus(shift.times(enclose(2 * Math.sin(angle)))).times(module);
}

/**
 * The base pitch π m cos α: what a span grows by from k to k + 1 teeth, whatever the shift or the thinning.
 *
 * @example
 * basePitch({ teeth: 22, module: rational(1) }).low.toDecimal(); // => "2.952"
 */
export const basePitch = (gear: GaugedGear): Bounded =>
  enclose(Math.PI * Math.cos(angleIn(check(gear)))).times(gear.module);
