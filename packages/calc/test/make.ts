import { expect } from "vitest";
import { readBuild } from "../src/document/index.js";
import type { Build } from "../src/drivetrain/index.js";
import type { Finding } from "../src/stages/index.js";
import { evaluate, type Evaluation } from "../src/evaluate/index.js";

type Data = Record<string, unknown>;

/** A pair with an id that its place gives it. */
export const pair = (id: string, driver: number, driven: number, more: Data = {}): Data => ({
  id,
  kind: "pair",
  driver,
  driven,
  ...more,
});

/** A document with the outputs given: each a list of stages, or a whole output without its id. */
export function document(
  stages: readonly Data[],
  outputs: Readonly<Record<string, readonly Data[] | Data>>,
  more: Data = {},
) {
  return {
    format: "meshwright-build/1",
    stages,
    outputs: Object.entries(outputs).map(([id, one]) =>
      Array.isArray(one) ? { id, stages: one } : { id, stages: [], ...one },
    ),
    ...more,
  };
}

/** Reads a document that has no errors. */
export function read(json: unknown): Build {
  const { build, findings } = readBuild(json);
  expect(findings.filter((one) => one.severity === "error")).toEqual([]);
  return build!;
}

export const evaluated = (...parts: Parameters<typeof document>): Evaluation => evaluate(read(document(...parts)));

/** The reduction of an output as a fraction; it has to be exact. */
export function fraction(evaluation: Evaluation, id: string): string {
  const { bounds } = evaluation.output(id)!;
  expect(bounds!.isExact).toBe(true);
  return bounds!.low.toFraction();
}

/** Findings as `code at at`, errors first in their order. */
export const told = (findings: readonly Finding[]): string[] => findings.map(({ code, at }) => `${code} at ${at}`);
