import { freeId, stageShape, type Build } from "@meshwright/calc/drivetrain";
import { samples, type Stage } from "@meshwright/calc/stages";

/** One thing that can be said about a stage, and how. */
export interface Field {
  readonly name: string;
  /** As the kinds describe it, without the mark for "must be there". */
  readonly shape: string;
  readonly needed: boolean;
}

const structural = /^(id|kind|positions)$/;
/** Lists of anything but counts are not written in a line. */
const listed = /^\[(?!count\])/;

/** The fields of a kind of stage, those first that must be there. */
export function fieldsOf(kind: Stage["kind"]): readonly Field[] {
  const fields = Object.entries(stageShape(kind))
    .filter(([name, shape]) => !structural.test(name) && !listed.test(shape))
    .map(([name, shape]) => ({ name, shape: shape.replace("!", ""), needed: shape.endsWith("!") }));
  return [...fields.filter(({ needed }) => needed), ...fields.filter(({ needed }) => !needed)];
}

/** A stage of a kind to begin with, under an id that nothing in the build has. */
export function newStage(kind: Stage["kind"], isTaken: (id: string) => boolean): Stage {
  return { id: freeId(kind, isTaken), kind, ...structuredClone(samples[kind]) } as unknown as Stage;
}

/** A list of stages with what it is called and how changes name it. */
export interface StageList {
  readonly label: string | undefined;
  readonly into: string | undefined;
  readonly stages: readonly Stage[];
}

/** The lists of a build in the order of drive, without those inside positions. */
export const listsOf = (build: Build): readonly StageList[] => [
  { label: undefined, into: undefined, stages: build.stages },
  ...[...(build.branches ?? []), ...build.outputs].map(({ id, label = id, stages }) => ({ label, into: id, stages })),
];
