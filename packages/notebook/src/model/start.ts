import { readBuild } from "@meshwright/calc/document";
import { freeId, type Build, type Change, type Output, type Part } from "@meshwright/calc/drivetrain";
import { evaluate } from "@meshwright/calc/evaluate";
import { figureOf } from "@meshwright/calc/report";
import type { Finding, Stage } from "@meshwright/calc/stages";
import type { Session } from "./session.js";

// From an empty page to the first totals: the drivetrain grows from the motor outwards.

/** A build of what the motor turns first, or what stands against it. */
export function firstBuild(stage: Stage, title: string, parts?: readonly Part[]) {
  return readBuild({
    format: "meshwright-build/1",
    title,
    stages: [stage],
    outputs: [{ id: "drive", label: "Wheels", stages: [] }],
    ...(parts?.length && { parts }),
    rounding: { minimumFractionDigits: 2, maximumFractionDigits: 2 },
  });
}

/** Begins the drivetrain; answers with what stands against it. */
export function begin(session: Session, stage: Stage, title: string): readonly Finding[] {
  const reading = firstBuild(stage, title, session.notebook.shelf);
  if (!reading.ok) return reading.findings;
  session.put({ build: reading.build, shelf: undefined }, `${stage.label ?? stage.id} put in`);
  return [];
}

/** Axles as people have them, and what they are called. */
export const axleChoices = [
  { id: "front-rear", title: "Front and rear", axles: ["Front", "Rear"] },
  { id: "rear", title: "Rear only", axles: ["Rear"] },
  { id: "front", title: "Front only", axles: ["Front"] },
  { id: "three", title: "Three axles", axles: ["Front", "Middle", "Rear"] },
] as const;

/** Splits a drive that has one nameless end among axles; what stands behind the first goes to the first. */
export function splitChange({ outputs }: Build, axles: readonly string[]): readonly Change[] {
  const [only] = outputs;
  const next: Output[] = axles.map((label, n) => ({
    id: label.toLowerCase(),
    label,
    stages: n === 0 ? only!.stages : [],
    ...(only!.wheel && { wheel: only!.wheel }),
    wheels: 2,
  }));
  const compare = next.length > 1 ? [{ set: "compare", to: { of: next[0]!.id, with: next.at(-1)!.id } }] : [];
  return [{ set: "outputs", to: next }, ...compare];
}

/** One more axle, at the end of the drive. */
export function axleChange(build: Build, label: string): readonly Change[] {
  const plain = label.trim() || "Another axle";
  const known =
    /^(front|middle|rear|left|right)$/i.test(plain) && !build.outputs.some(({ id }) => id === plain.toLowerCase());
  const output: Output = {
    id: known ? plain.toLowerCase() : freeId("axle", [build]),
    label: plain,
    stages: [],
    wheels: 2,
  };
  return [{ set: "outputs", to: [...build.outputs, output] }];
}

/** Takes an axle off; what speaks of it goes along. */
export function withoutAxle(build: Build, id: string): readonly Change[] {
  const left = build.outputs.filter((output) => output.id !== id);
  const { compare, target, headline } = build;
  return [
    ...(compare && (compare.of === id || compare.with === id) ? [{ set: "compare", to: null }] : []),
    ...(target?.output === id ? [{ set: "target.output", to: null }] : []),
    ...(headline === id ? [{ set: "headline", to: null }] : []),
    { set: "outputs", to: left },
  ];
}

/** What it comes to so far: "4.13", or by axle "Front 31.47 to 31.60, rear 31.40 to 31.53". */
export function totalsText(build: Build): string {
  const evaluation = evaluate(build);
  const texts = evaluation.outputs.map(({ id, label }, n) => {
    const total = figureOf(evaluation, { figure: "reduction", of: id });
    if (evaluation.outputs.length === 1) return total;
    return `${n ? label.charAt(0).toLowerCase() + label.slice(1) : label} ${total}`;
  });
  return texts.join(", ");
}
