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

/** Where a field stands: what it is about. */
export type FieldGroup = "basics" | "pitch" | "direction" | "parts";

const groups: Readonly<Record<Exclude<FieldGroup, "basics">, RegExp>> = {
  pitch:
    /^(module|diametralPitch|pressureAngle|helixAngle|\w+(Shift|Tip)|thinning|pitch|beltTeeth|centre|tensioner|diameter|planets?)$/,
  direction: /^(reverses|ringSide|pinionSide|internal)$/,
  parts: /^(label|group|per|fitted|\w+Label|set|sameAs)$/,
};

/** Fields by what they are about, in one order for all kinds; groups without a field are left out. */
export function groupsOf(fields: readonly Field[]): readonly (readonly [FieldGroup, readonly Field[]])[] {
  const groupOf = ({ name }: Field): FieldGroup =>
    (Object.keys(groups) as (keyof typeof groups)[]).find((group) => groups[group].test(name)) ?? "basics";
  return (["basics", "pitch", "direction", "parts"] as const).flatMap((group) => {
    const own = fields.filter((field) => groupOf(field) === group);
    return own.length ? [[group, own] as const] : [];
  });
}

/** The unit that stands behind a field: of lengths, where the build's is meant; angles; modules. */
export function unitOf({ name, shape }: Field, lengths: string): string | undefined {
  if (/Angle$/.test(name)) return "°";
  if (name === "module") return "mm";
  return /^(size|length)$/.test(shape) ? lengths : undefined;
}

/** A stage of a kind to begin with, under an id that nothing in the builds has. */
export function newStage(kind: Stage["kind"], builds: readonly Build[]): Stage {
  return { id: freeId(kind, builds), kind, ...structuredClone(samples[kind]) } as unknown as Stage;
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
