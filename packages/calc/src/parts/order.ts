import { branchesOf, stagesOf, type Build, type Output, type Part } from "../drivetrain/index.js";
import { lengthOf, rational, type Rational } from "../exact/index.js";
import { beltOf, comparePitch, type Toothed } from "../gears/index.js";
import type { BeltStage, PartKind } from "../stages/index.js";

/** What one place in a build asks for. */
export interface Need {
  /** The stage, or the output whose wheels are meant. */
  readonly stage: string;
  readonly is: readonly PartKind[];
  readonly pieces: number;
  /** Of a belt its teeth, or the links of a chain; of a worm its starts. */
  readonly teeth?: number | undefined;
  /** Belts that set the wanted centre distance, a little closer or farther: one of them is needed. */
  readonly either?: readonly number[] | undefined;
  /** Of a planetary set sun and ring. */
  readonly driver?: number | undefined;
  readonly driven?: number | undefined;
  readonly value?: string | undefined;
  readonly diameter?: string | undefined;
  readonly pitch?: Toothed;
  /** From tooth to tooth of a belt and its pulleys. */
  readonly beltPitch?: string | undefined;
  /** Of a belt or chain of a known count, along its pitch line, in millimetres. */
  readonly length?: Rational | undefined;
  /** The part that answers it best; none where no part does. */
  readonly part?: Part;
}

const single: readonly PartKind[] = ["gear", "pinion", "spur"];
const together: readonly PartKind[] = ["set", "hub", "gearbox"];
const wheelsOf = ({ wheels = 2 }: Output): number => wheels;

const sameText = (a: string | undefined, b: string | undefined, read: (text: string) => Rational): boolean =>
  a === b || (a !== undefined && b !== undefined && read(a).equals(read(b)));

/** Whether a part's count is the one asked for. Where it is not known which belt, only one that is meant for the place will do. */
const countAnswers = (part: Part, { is, teeth, either, stage }: Need): boolean =>
  teeth !== undefined
    ? teeth === part.teeth
    : either
      ? either.includes(part.teeth!)
      : !is.includes("belt") || part.stage === stage;

/**
 * Whether a part is what is asked for, as far as both say. One that is meant for another place has to be known to be the
 * same: teeth alone do not make a motor's pinion a hub's.
 */
function answers(part: Part, need: Need): boolean {
  const { is, driver, driven, value, diameter, pitch = {}, beltPitch } = need;
  const isElsewhere = part.stage !== undefined && part.stage !== need.stage;
  const teeth = comparePitch(part, pitch)?.pitch;
  const isKnown = teeth ?? diameter ?? (beltPitch && part.pitch);
  return (
    is.includes(part.is) &&
    countAnswers(part, need) &&
    (!beltPitch || !part.pitch || sameText(beltPitch, part.pitch, lengthOf)) &&
    (driver === undefined || (driver === part.driver && driven === part.driven)) &&
    (value === undefined || value === part.value) &&
    (diameter === undefined || sameText(diameter, part.diameter, lengthOf)) &&
    (teeth ?? "same") === "same" &&
    (!isElsewhere || !!isKnown)
  );
}

/** The lower, the sooner it is taken: meant for this place, owned, on sale, not known, meant for another place, not on sale. */
const rank = ({ stage, owned, available }: Part, place: string): number =>
  stage === place ? 0 : stage !== undefined ? 4 : owned ? 1 : available ? 2 : available === undefined ? 3 : 5;

/** The belts that a stage can have, where its centre distance is given and its count is not. A tensioner takes any longer one. */
function beltsFor(stage: BeltStage): readonly number[] | undefined {
  try {
    const { choices } = beltOf(stage);
    return choices.length && !stage.tensioner ? choices.map(({ teeth }) => teeth) : undefined;
  } catch {
    // A pitch or a centre distance of nothing has no belt.
    return undefined;
  }
}

/**
 * What every place of a build asks for, with the part among those given that answers it best. A stage takes one for the
 * vehicle, or one for each axle or wheel that it drives; a pair, or a worm with its wheel, is a set where it is sold as one,
 * else two parts.
 */
export function needsOf(build: Build, parts: readonly Part[]): Need[] {
  const needs: Need[] = [];
  const add = (need: Need) => {
    const [part] = parts
      .filter((one) => answers(one, need))
      .sort((a, b) => rank(a, need.stage) - rank(b, need.stage) || (a.id < b.id ? -1 : 1));
    needs.push(part ? { ...need, part } : need);
  };
  for (const { stage, pointer } of stagesOf(build)) {
    const [, list, n] = pointer.split("/");
    const driven = build.outputs.filter((output, m) =>
      list === "outputs"
        ? m === Number(n)
        : list === "branches"
          ? branchesOf(build, output).includes(build.branches![Number(n)]!)
          : !output.motor,
    );
    const { per } = stage;
    const pieces =
      per === "wheel" ? driven.reduce((sum, output) => sum + wheelsOf(output), 0) : per === "axle" ? driven.length : 1;
    const common = { stage: stage.id, pieces };
    const { module, diametralPitch, pressureAngle } = stage as Toothed;
    const pitch = { module, diametralPitch, pressureAngle } as Toothed;
    const one = (is: readonly PartKind[], teeth: number) => add({ ...common, is, teeth, pitch });
    const both = (
      driver: number,
      driven: number,
      first: readonly PartKind[],
      second: readonly PartKind[],
      isSet = false,
    ) => {
      const whole: Need = { ...common, is: together, driver, driven };
      if (isSet || parts.some((part) => answers(part, whole))) add(whole);
      else {
        one(first, driver);
        one(second, driven);
      }
    };
    if (stage.kind === "pair") both(stage.driver, stage.driven, ["pinion", "gear"], ["gear", "spur"], stage.set);
    else if (stage.kind === "worm") both(stage.starts, stage.teeth, ["worm"], ["gear"]);
    else if (stage.kind === "train") stage.teeth.forEach((teeth) => one(single, teeth));
    else if (stage.kind === "planetary") {
      const sets = pieces * (stage.repeat ?? 1);
      add({ ...common, is: ["planetary"], pieces: sets, driver: stage.sun, driven: stage.ring, pitch });
    } else if (stage.kind === "belt") {
      const { beltTeeth, pitch: beltPitch } = stage;
      for (const teeth of [stage.driver, stage.driven]) add({ ...common, is: ["pulley"], teeth, beltPitch });
      const length = beltTeeth && beltPitch ? lengthOf(beltPitch).times(beltTeeth) : undefined;
      const either = beltTeeth ? undefined : beltsFor(stage);
      add({ ...common, is: ["belt"], teeth: beltTeeth, either, beltPitch, length });
    } else if (stage.kind === "published") add({ ...common, is: ["gearbox"], value: stage.value });
  }
  for (const output of build.outputs) {
    const diameter = output.wheel?.diameter;
    if (diameter) add({ stage: output.id, is: ["wheel"], pieces: wheelsOf(output), diameter });
  }
  return needs;
}

/** A part and how many pieces of it. */
export interface OrderLine {
  readonly part: Part;
  readonly pieces: number;
}

export interface BuyLine extends OrderLine {
  /** Whole packs. */
  readonly packs: number;
  /** What the packs cost; undefined where the part has no price. */
  readonly cost?: { readonly amount: Rational; readonly currency: string };
}

/** What a change means to get. */
export interface OrderList {
  readonly buy: readonly BuyLine[];
  /** New in the build, but owned or ordered already. */
  readonly owned: readonly OrderLine[];
  readonly stays: readonly OrderLine[];
  /** Taken off, or more in the packs than is needed. */
  readonly left: readonly OrderLine[];
  /** Of all that has a price, exactly, by currency. */
  readonly sums: readonly { readonly currency: string; readonly amount: Rational }[];
  /** How many lines to buy have no price. */
  readonly unpriced: number;
  /** What the build asks for after the change, more than before, and no part answers. */
  readonly missing: readonly Need[];
}

/** Those of which there are more than before, so many more. */
function more(before: readonly Need[], after: readonly Need[]): Need[] {
  const left = new Map<string, number>();
  const keyOf = (need: Need) => JSON.stringify({ ...need, pieces: 0 });
  for (const need of before) left.set(keyOf(need), (left.get(keyOf(need)) ?? 0) + need.pieces);
  return after.flatMap((need) => {
    const there = Math.min(need.pieces, left.get(keyOf(need)) ?? 0);
    left.set(keyOf(need), (left.get(keyOf(need)) ?? 0) - there);
    return there < need.pieces ? [{ ...need, pieces: need.pieces - there }] : [];
  });
}

const total = (needs: readonly Need[]): Map<Part, number> => {
  const pieces = new Map<Part, number>();
  for (const need of needs) if (need.part) pieces.set(need.part, (pieces.get(need.part) ?? 0) + need.pieces);
  return pieces;
};

const isOpen = ({ part }: Need): boolean => !part;

/** What is owned of a part: as said, else what is fitted, and one where it is called owned, ordered or spare. */
const ownedOf = ({ owned, status }: Part, fitted: number): number =>
  owned ?? fitted + (status && status !== "fitted" ? 1 : 0);

/**
 * What it takes to go from one state of a build to another: to buy in whole packs, owned already, stays, left over. Where a
 * price is missing nothing is invented.
 *
 * @example
 * const price = { amount: "4.20", currency: "EUR" };
 * const [old, fresh] = [{ id: "p23", is: "pinion", teeth: 23 }, { id: "p15", is: "pinion", teeth: 15, pack: 2, price }] as const;
 * const before = [{ stage: "primary", is: ["pinion"], pieces: 1, part: old }] as const;
 * const { buy, left, sums } = orderOf(before, [{ ...before[0], pieces: 3, part: fresh }]);
 * buy.map(({ part, pieces, packs }) => [part.id, pieces, packs]); // => [["p15", 3, 2]]
 * left.map(({ part, pieces }) => [part.id, pieces]); // => [["p15", 1], ["p23", 1]]
 * sums.map(({ currency, amount }) => [currency, amount.toFraction()]); // => [["EUR", "42/5"]]
 */
export function orderOf(before: readonly Need[], after: readonly Need[]): OrderList {
  const old = total(before);
  const wanted = total(after);
  const buy: BuyLine[] = [];
  const [owned, stays, left]: OrderLine[][] = [[], [], []] as never;
  const sums = new Map<string, Rational>();
  for (const part of new Set([...wanted.keys(), ...old.keys()])) {
    const fitted = old.get(part) ?? 0;
    const need = wanted.get(part) ?? 0;
    const put = (lines: OrderLine[], pieces: number) => pieces > 0 && lines.push({ part, pieces });
    put(stays!, Math.min(fitted, need));
    const more = Math.max(0, need - fitted);
    const spare = Math.min(more, Math.max(0, ownedOf(part, fitted) - fitted));
    put(owned!, spare);
    const pieces = more - spare;
    const { pack = 1, price } = part;
    const packs = Math.ceil(pieces / pack);
    put(left!, Math.max(0, fitted - need) + packs * pack - pieces);
    if (!packs) continue;
    const cost = price && { amount: rational(price.amount).times(packs), currency: price.currency };
    buy.push({ part, pieces, packs, ...(cost && { cost }) });
    if (cost) sums.set(cost.currency, cost.amount.plus(sums.get(cost.currency) ?? 0));
  }
  return {
    buy,
    owned: owned!,
    stays: stays!,
    left: left!,
    sums: [...sums].map(([currency, amount]) => ({ currency, amount })),
    unpriced: buy.filter(({ cost }) => !cost).length,
    missing: more(before.filter(isOpen), after.filter(isOpen)),
  };
}
