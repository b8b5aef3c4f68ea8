import type { Mount } from "../drivetrain/index.js";
import type { Step } from "../evaluate/index.js";
import { bounded, lengthOf, type Bounded } from "../exact/index.js";
import { drawings, type Stage } from "../stages/index.js";
import {
  beltOf,
  type BeltQuestion,
  formOf,
  type Form,
  type Toothing,
  enclose,
  type Approximate,
  meshingPhase,
  pitchDiameter,
  radiiOf,
  type GearRadii,
  type GearShape,
} from "../gears/index.js";
import { fits } from "../fit/index.js";
import { centreCodes, mountOf } from "./mounts.js";
import type { Layout, PlacedMount, PlacedWheel, Span } from "./placed.js";

type Wheel = { -readonly [Key in keyof PlacedWheel]: PlacedWheel[Key] };

/** A wheel before it has its place. */
type Unplaced = Omit<PlacedWheel, "x" | "label" | "stageLabel"> & { readonly label: string | undefined };

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

/** The pitch circle of a pulley or a sprocket. */
const pulleyRadii = ({ pitch, chain }: BeltQuestion, teeth: number): GearRadii => {
  const reference = pitchDiameter({ pitch: lengthOf(pitch!, "pitch"), teeth, chain }) / 2;
  return { reference, base: reference, tip: reference, root: reference };
};

/** The names of a stage's two ends, where it has such. */
type Labelled = Stage & { readonly driverLabel?: string; readonly drivenLabel?: string };

/**
 * Puts the gears of a drive in their places: pairs and rows of spur and helical gears on their true centre distances with
 * their openings, belts and chains whose pitch and length are known, also where a tensioner takes up the rest. A stage that
 * starts where another ends starts on its axis; after one that has no place, the next stands apart.
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

  const names = new Map(steps.map(({ stage }) => [stage.id, stage.label]));
  const place = ({ label, ...rest }: Unplaced, x: number): Wheel => {
    const stageLabel = names.get(rest.stage);
    const whole = {
      ...rest,
      x,
      ...(stageLabel !== undefined && { stageLabel }),
      ...(label !== undefined && { label }),
    };
    wheels.push(whole);
    return whole;
  };
  const start = (wheel: Unplaced): Wheel => {
    const before = wheels.map((one) => one.x + outermost(one));
    return place(wheel, axis ?? (before.length ? Math.max(...before) + wheel.radii.tip * 1.5 + 2 : 0));
  };

  for (const { stage, reduction, turns: way } of steps) {
    const { pairs, belt } = drawings[stage.kind](stage) ?? {};
    const { driverLabel, drivenLabel } = stage as Labelled;
    const forms = (pairs ?? []).map(formOf);
    const choice = belt && beltOf(belt).choices[0];
    if (pairs && forms.every((form) => typeof form !== "string")) {
      let driver: Wheel | undefined;
      pairs.forEach((pair, n) => {
        const form = forms[n]!;
        const mount = mounts.find((one) => one.stage === stage.id);
        const fit = mount && fits({ pair, mount });
        const met = fit?.reasons.find(({ code }) => code in centreCodes);
        const centre = met?.needed ?? fit?.centre ?? form.centre;
        const shapes = [shapeOf(form, form.driver), shapeOf(form, form.driven)] as const;
        driver ??= start({
          stage: stage.id,
          role: "driver",
          label: driverLabel,
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
            label: drivenLabel,
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
    } else if (belt && choice) {
      const wheel = (role: "driver" | "driven", label: string | undefined): Unplaced => ({
        stage: stage.id,
        role,
        label,
        teeth: belt[role],
        radii: pulleyRadii(belt, belt[role]),
        phase: 0,
        turns,
      });
      const driver = start(wheel("driver", driverLabel));
      turns = turns && (turns * belt.driver) / belt.driven;
      const { tensioner } = belt;
      const isSet = belt.beltTeeth !== undefined && !tensioner;
      const centre = isSet ? enclose(choice.centre) : bounded(lengthOf(belt.centre!));
      const driven = place(wheel("driven", drivenLabel), driver.x + near(centre));
      const by = belt.chain ? "chain" : "belt";
      spans.push({ stage: stage.id, by, driver, driven, centre, ...(tensioner && { tensioner }) });
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
