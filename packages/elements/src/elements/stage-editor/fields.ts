import { freeId, stageShape, type Build } from "@meshwright/calc/drivetrain";
import type { Stage } from "@meshwright/calc/stages";

/** One thing that can be said about a stage, and how. */
export interface Field {
  readonly name: string;
  /** As the kinds describe it, without the mark for "must be there". */
  readonly shape: string;
  readonly needed: boolean;
}

const structural = /^(id|kind|positions)$/;

/** The fields of a kind of stage, those first that must be there. */
export function fieldsOf(kind: Stage["kind"]): readonly Field[] {
  const fields = Object.entries(stageShape(kind))
    .filter(([name]) => !structural.test(name))
    .map(([name, shape]) => ({ name, shape: shape.replace("!", ""), needed: shape.endsWith("!") }));
  return [...fields.filter(({ needed }) => needed), ...fields.filter(({ needed }) => !needed)];
}

const first: Readonly<Record<string, unknown>> = {
  sun: 12,
  ring: 60,
  fixed: "ring",
  input: "sun",
  output: "carrier",
  starts: 1,
  value: "2.5",
};

/** A stage of a kind to begin with, under an id that nothing in the build has. */
export function newStage(kind: Stage["kind"], isTaken: (id: string) => boolean): Stage {
  const stage: Record<string, unknown> = { id: freeId(kind, isTaken), kind };
  for (const { name, shape, needed } of fieldsOf(kind))
    if (needed)
      stage[name] = first[name] ?? (shape === "count" ? 20 : shape.startsWith("[count]") ? [20, 20, 20] : "1");
  if (kind === "selectable") {
    stage.positions = ["low", "high"].map((id) => ({ id, stages: [] }));
    stage.selected = "low";
  }
  return stage as unknown as Stage;
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
