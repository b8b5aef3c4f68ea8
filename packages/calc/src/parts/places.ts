import {
  branchesOf,
  stagesOf,
  type Battery,
  type Build,
  type Motor,
  type Mount,
  type Output,
  type Part,
} from "../drivetrain/index.js";
import type { PartKind } from "../stages/index.js";
import { fittedTo, needsOfStage, type Spec } from "./stage-needs.js";

/** What one place in a build asks for. */
export interface Need extends Spec {
  /** The stage; or the output whose wheels or motor are meant; or `motor`, `battery`, `controller`; or nothing: the vehicle. */
  readonly stage: string;
  readonly pieces: number;
  /** The part that answers it best; none where no part does. */
  readonly part?: Part;
  /** The part is said to be there: the stage names it as fitted, or it is fitted to, or meant for, this place. */
  readonly named?: boolean;
}

/** A place, and what it asks for before anybody looks for parts. */
export interface Place {
  readonly id: string;
  readonly fitted: readonly string[];
  readonly drives: readonly Output[];
  readonly pieces: number;
  readonly mount?: Mount | undefined;
  /** Each part by itself. */
  readonly each: readonly Need[];
  /** Two gears as one part, and whether they can be had as two. */
  readonly whole?: Need | undefined;
  readonly only?: boolean | undefined;
}

const wheelsOf = ({ wheels = 2 }: Output): number => wheels;
const wheelsIn = (outputs: readonly Output[]): number => outputs.reduce((sum, output) => sum + wheelsOf(output), 0);
export const piecesPer = (per: Part["per"], outputs: readonly Output[]): number =>
  per === "wheel" ? wheelsIn(outputs) : per === "axle" ? outputs.length : 1;

/** Where every stage, wheel, motor and what else is asked for stands; the vehicle last, without a name. */
export function placesOf(build: Build): Place[] {
  const { outputs, branches = [], motor, battery, controller } = build;
  const mounts = new Map(build.mounts?.map((mount) => [mount.stage, mount]));
  const places: Place[] = [];
  for (const { stage, pointer } of stagesOf(build)) {
    const [, list, n] = pointer.split("/");
    const isDriven = (output: Output, m: number): boolean =>
      list === "outputs"
        ? m === Number(n)
        : list === "branches"
          ? branchesOf(build, output).includes(branches[Number(n)]!)
          : !output.motor;
    const drives = outputs.filter(isDriven);
    const { each, together } = needsOfStage(stage);
    const pieces = piecesPer(stage.per, drives);
    const needOf = ({ times = 1, ...spec }: Spec & { readonly times?: number }): Need => ({
      stage: stage.id,
      pieces: pieces * times,
      ...spec,
    });
    places.push({
      id: stage.id,
      fitted: fittedTo(stage),
      drives,
      pieces,
      mount: mounts.get(stage.id),
      each: each.map(needOf),
      whole: together && needOf(together.spec),
      only: together?.only,
    });
  }
  const add = (id: string, drives: readonly Output[], ...each: readonly Need[]) =>
    places.push({ id, fitted: [], drives, pieces: 1, each });
  const one = (id: string, is: PartKind, { label, ...rated }: Motor & Battery): Need => ({
    ...{ stage: id, is: [is], pieces: 1, label, rated },
  });
  for (const output of outputs) {
    const { id, wheel } = output;
    const each: Need[] = [];
    if (wheel) {
      const { diameter, loadedDiameter, travel } = wheel;
      each.push({ stage: id, is: ["wheel"], pieces: wheelsOf(output), diameter, loadedDiameter, travel });
    }
    if (output.motor) each.push(one(id, "motor", output.motor));
    add(id, [output], ...each);
  }
  if (motor) add("motor", outputs, one("motor", "motor", motor));
  if (battery) add("battery", outputs, one("battery", "battery", battery));
  if (controller) add("controller", outputs, one("controller", "other", controller));
  add("", outputs);
  return places;
}
