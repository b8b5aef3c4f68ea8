import type { Mount } from "../drivetrain/index.js";
import type { Step } from "../evaluate/index.js";
import { bounded, lengthOf, type Bounded } from "../exact/index.js";
import type { BeltStage, Stage } from "../stages/index.js";
import {
  beltOf,
  centreOf,
  formOf,
  type Form,
  type ToothPair,
  type Toothing,
  enclose,
  type Approximate,
  meshingPhase,
  radiiOf,
  type GearRadii,
  type GearShape,
} from "../gears/index.js";
import { fits, type Fit, limitsOf } from "../fit/index.js";

/** A gear or pulley in its place. All axes lie on one line; lengths are in millimetres. */
export interface PlacedWheel {
  readonly stage: string;
  readonly role: "driver" | "driven" | "idler";
  readonly label?: string;
  readonly teeth: number;
  /** Where its axis lies; the first driven axis lies at 0, its driver on the near side of it. */
  readonly x: Approximate;
  readonly radii: GearRadii;
  /** Its tooth form; a pulley or sprocket has none here. */
  readonly shape?: GearShape;
  /** The angle of the middle of a tooth (of a ring: of a space) in radians, so that it meshes with its neighbour. */
  readonly phase: Approximate;
  /** Turns for one turn of the motor, below zero against it; undefined where that is not known. */
  readonly turns: Approximate | undefined;
}

/** Two wheels that drive one another. */
export interface Span {
  readonly stage: string;
  /** `mesh`: by their teeth. Else open runs of a belt or a chain. */
  readonly by: "mesh" | "belt" | "chain";
  readonly driver: PlacedWheel;
  readonly driven: PlacedWheel;
  /** Between their axes, with the opening: where they run. */
  readonly centre: Bounded;
}

/** Something that stands near a wheel, and the room between. */
export interface PlacedWall {
  readonly label?: string;
  readonly wheel: PlacedWheel;
  /** From the wheel's axis. */
  readonly distance: Bounded;
  /** From the tips to it. */
  readonly gap: Bounded;
  readonly needed: Bounded;
  readonly kept: boolean | undefined;
}

/** What a span is mounted in: the centre distances that can be set, as seen from the driven axis. */
export interface PlacedMount {
  readonly span: Span;
  readonly fit: Fit;
  readonly from?: Bounded;
  readonly to?: Bounded;
  readonly holes: readonly Bounded[];
  /** The driver swings about a point so far from the driven axis, on an arm so long. */
  readonly pivot?: { readonly distance: Approximate; readonly arm: Approximate };
  /** What the centre distance lacks, and at which end. */
  readonly short?: { readonly by: Bounded; readonly end: "from" | "to" | "hole" };
  readonly walls: readonly PlacedWall[];
  /** Diameter of the driver's shaft. */
  readonly shaft?: Approximate;
}

/** Gears in their places, and what has no place: stages whose geometry is not that of spur gears, or is not known. */
export interface Layout {
  readonly wheels: readonly PlacedWheel[];
  readonly spans: readonly Span[];
  readonly mounts: readonly PlacedMount[];
  readonly notDrawn: readonly Stage[];
}

type Wheel = { -readonly [Key in keyof PlacedWheel]: PlacedWheel[Key] };

/** A wheel before it has its place. */
type Unplaced = Omit<PlacedWheel, "x" | "label"> & { readonly label: string | undefined };

/** Floating point, for places; the figures themselves stay as they are. */
const near = (length: Bounded): Approximate => length.low.toNumber();

const outermost = ({ radii }: PlacedWheel): number => Math.max(radii.tip, radii.root);

/** The section of one gear of a pair: helical teeth have a larger module across the axis. */
const shapeOf = ({ module, cosHelix, transverseAngle }: Form, { teeth, shift, tip }: Toothing): GearShape => {
  const height = module.toNumber();
  const shape: GearShape = {
    teeth: Math.abs(teeth),
    module: height / cosHelix,
    pressureAngle: (transverseAngle * 180) / Math.PI,
    shift: shift.toNumber() * cosHelix,
    internal: teeth < 0,
    tip: near(tip) / 2,
  };
  const inward = Math.sign(teeth) * height * (shift.toNumber() - 1.25);
  return { ...shape, root: radiiOf(shape).reference + inward };
};

/** A pulley's pitch circle: so many pitches around. */
const pulleyRadii = ({ pitch }: BeltStage, teeth: number): GearRadii => {
  const reference = (lengthOf(pitch!).toNumber() * teeth) / (2 * Math.PI);
  return { reference, base: reference, tip: reference, root: reference };
};

/** The pairs that a stage is made of, as gears that mesh one after the other. */
function pairsOf(stage: Stage): ToothPair[] | undefined {
  if (stage.kind === "pair") return [stage];
  if (stage.kind !== "train") return undefined;
  return stage.teeth.slice(1).map((driven, n) => ({ ...stage, driver: stage.teeth[n]!, driven }) as ToothPair);
}

/** Reasons that speak of the centre distance, and the end of the mount that they meet. */
const centreCodes = { "too-close": "from", "too-far": "to", "no-hole": "hole" } as const;

function mountOf(span: Span, pair: ToothPair, form: Form, mount: Mount, fit: Fit): PlacedMount {
  const ends = (end: "from" | "to"): Bounded | undefined => {
    const limits = limitsOf(mount, pair).filter((limit) => limit.end === end);
    const sign = end === "from" ? 1 : -1;
    return limits.sort((a, b) => sign * (near(b.at) - near(a.at)))[0]?.at;
  };
  const [from, to] = [ends("from"), ends("to")];
  const reason = fit.reasons.find(({ code }) => code in centreCodes);
  const { pivot, holes = [], walls = [], shaft } = mount;
  return {
    span,
    fit,
    ...(from !== undefined && { from }),
    ...(to !== undefined && { to }),
    ...(shaft !== undefined && { shaft: lengthOf(shaft, "shaft").toNumber() }),
    holes: holes.map((hole) => bounded(lengthOf(hole))),
    ...(pivot && {
      pivot: { distance: lengthOf(pivot.distance).toNumber(), arm: lengthOf(pivot.arm).toNumber() },
    }),
    ...(reason?.short !== undefined && {
      short: { by: reason.short, end: centreCodes[reason.code as keyof typeof centreCodes] },
    }),
    walls: walls
      .filter(({ of = "driven" }) => form[of].teeth > 0)
      .map(({ label, of = "driven", distance: text, gap: least = 0 }) => {
        const distance = bounded(lengthOf(text));
        const gap = distance.minus(form[of].tip.times("1/2"));
        const needed = bounded(lengthOf(least));
        const compared = gap.compare(needed);
        return {
          ...(label !== undefined && { label }),
          wheel: span[of],
          distance,
          gap,
          needed,
          kept: compared === undefined ? undefined : compared >= 0,
        };
      }),
  };
}

/**
 * Puts the gears of a drive in their places: pairs and rows of spur and helical gears on their true centre distances with
 * their openings, belts and chains whose pitch and length are known. A stage that starts where another ends starts on its
 * axis; after one that has no place, the next stands apart.
 *
 * @param steps the stages of an output (`evaluation.output(id).steps`), or some of them, in the order of drive
 * @throws MeshwrightError where a number or a length cannot be read
 *
 * @example
 * const steps = [{ stage: { id: "one", kind: "pair", driver: 15, driven: 62, module: "0.8" } }] as const;
 * const { wheels, spans } = layoutOf(steps);
 * [wheels.map((wheel) => wheel.x), spans[0]!.centre.low.toFraction()]; // => [[-30.8, 0], "154/5"]
 */
export function layoutOf(
  steps: readonly (Pick<Step, "stage"> & Partial<Pick<Step, "reduction" | "turns">>)[],
  mounts: readonly Mount[] = [],
): Layout {
  const wheels: Wheel[] = [];
  const spans: Span[] = [];
  const placed: PlacedMount[] = [];
  const notDrawn: Stage[] = [];
  let turns: number | undefined = 1;
  /** Where the next stage starts: on the last one's axis, or apart from everything before. */
  let axis: number | undefined;

  const place = ({ label, ...rest }: Unplaced, x: number): Wheel => {
    const whole = { ...rest, x, ...(label !== undefined && { label }) };
    wheels.push(whole);
    return whole;
  };
  const start = (wheel: Unplaced): Wheel => {
    const before = wheels.map((one) => one.x + outermost(one));
    return place(wheel, axis ?? (before.length ? Math.max(...before) + wheel.radii.tip * 1.5 + 2 : 0));
  };

  for (const { stage, reduction, turns: way } of steps) {
    const pairs = pairsOf(stage);
    const forms = (pairs ?? []).map(formOf);
    const labels = stage.kind === "pair" ? [stage.driverLabel, stage.drivenLabel] : [];
    const belt = stage.kind === "belt" ? beltOf(stage).choices[0] : undefined;
    if (pairs && forms.every((form) => typeof form !== "string")) {
      let driver: Wheel | undefined;
      pairs.forEach((pair, n) => {
        const form = forms[n]!;
        const mount = mounts.find((one) => one.stage === stage.id);
        const fit = mount && fits({ pair, mount });
        const met = fit?.reasons.find(({ code }) => code in centreCodes);
        const centre = met?.needed ?? centreOf(form).plus(fit?.opening ?? 0);
        const shapes = [shapeOf(form, form.driver), shapeOf(form, form.driven)] as const;
        driver ??= start({
          stage: stage.id,
          role: "driver",
          label: labels[0],
          teeth: pair.driver,
          radii: radiiOf(shapes[0]),
          shape: shapes[0],
          phase: 0,
          turns,
        });
        turns = turns && (turns * pair.driver) / (form.driven.teeth < 0 ? pair.driven : -pair.driven);
        const driven = place(
          {
            stage: stage.id,
            role: n < pairs.length - 1 ? "idler" : "driven",
            label: labels[1],
            teeth: pair.driven,
            radii: radiiOf(shapes[1]),
            shape: shapes[1],
            phase: meshingPhase(shapes[0], driver.phase, shapes[1], 0),
            turns,
          },
          driver.x + near(centre),
        );
        const span: Span = { stage: stage.id, by: "mesh", driver, driven, centre };
        spans.push(span);
        if (mount && fit) placed.push(mountOf(span, pair, form, mount, fit));
        driver = driven;
        axis = driven.x;
      });
    } else if (stage.kind === "belt" && belt) {
      const wheel = (role: "driver" | "driven"): Unplaced => ({
        stage: stage.id,
        role,
        label: stage[`${role}Label`],
        teeth: stage[role],
        radii: pulleyRadii(stage, stage[role]),
        phase: 0,
        turns,
      });
      const driver = start(wheel("driver"));
      turns = turns && (turns * stage.driver) / stage.driven;
      const centre = stage.beltTeeth === undefined ? bounded(lengthOf(stage.centre!)) : enclose(belt.centre);
      const driven = place(wheel("driven"), driver.x + near(centre));
      spans.push({ stage: stage.id, by: stage.chain ? "chain" : "belt", driver, driven, centre });
      axis = driven.x;
    } else {
      notDrawn.push(stage);
      axis = undefined;
      const bounds = way === "not known" ? undefined : reduction?.bounds;
      const through = bounds?.low.plus(bounds.high).over(2).toNumber();
      turns = turns && through && (way === "opposite way" ? -turns : turns) / through;
    }
  }
  const origin = spans[0]?.driven.x ?? 0;
  // The spans hold the same wheels: they move along.
  for (const wheel of wheels) wheel.x -= origin;
  return { wheels, spans, mounts: placed, notDrawn };
}
