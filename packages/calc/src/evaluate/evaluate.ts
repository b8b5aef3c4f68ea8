import type { Build } from "../drivetrain/index.js";
import { findingOf, type Finding, type FindingCode, type FindingValues } from "../stages/index.js";
import { details } from "./details.js";
import { Evaluation, type Further } from "./evaluation.js";
import type { OutputEvaluation } from "./output.js";
import type { Splitting } from "./splitting.js";

/** What is odd about the drive as a whole. */
function findingsOf(
  outputs: readonly OutputEvaluation[],
  oppose: (one: OutputEvaluation, other: OutputEvaluation) => boolean,
  splitting: Splitting | undefined,
): readonly Finding[] {
  const findings: Finding[] = [];
  const warn = (code: FindingCode, at: string, values: FindingValues) =>
    findings.push(findingOf("warning", "meaning", code, at, values));
  const first = outputs[0]!;
  outputs.forEach((output, n) => {
    if (n && oppose(first, output)) warn("outputs-oppose", `/outputs/${n}`, { of: first.label, with: output.label });
  });
  for (const output of outputs)
    if (output.locked && !output.reduction) {
      const loose = splitting!.looseOn(output);
      if (loose) warn("differential-released", loose.at.pointer, { of: output.label });
      else {
        const missing = splitting!.wheelless(output).map(({ label }) => label);
        warn("wheel-needed", `/outputs/${outputs.indexOf(output)}`, { of: output.label, missing });
      }
    }
  return findings;
}

const all: Further = { ...details, findings: findingsOf };

/**
 * Works a build out, as selected or in one of its modes. Lazy: reading two totals costs two totals.
 *
 * @param build as `readBuild` or `parseBuild` gave it
 * @throws MeshwrightError `not-read` where it was not read, `mode-missing` where it has no such mode
 *
 * @example
 * import { evaluate } from "@meshwright/calc/evaluate";
 * const stages = [{ id: "spur", kind: "pair", driver: 15, driven: 62 }, { id: "box", kind: "published", value: "2.6" }];
 * const front = { id: "front", stages: [{ id: "front-ring", kind: "pair", driver: 13, driven: 38 }], wheel: { diameter: "124 mm" } };
 * const rear = { id: "rear", stages: [{ id: "rear-ring", kind: "pair", driver: 12, driven: 35 }], wheel: { diameter: "120 mm" } };
 * const build = parseBuild({ format: "meshwright-build/1", stages, outputs: [front, rear] });
 * const evaluation = evaluate(build);
 * evaluation.output("rear")?.bounds?.toDecimals({ maximumFractionDigits: 2 }); // => { low: "30.74", high: "31.95" }
 * evaluation.output("rear")?.turns; // => "not known"
 * evaluation.compare()?.difference("tyres")?.low.toFraction(); // => "85/2736"
 * evaluation.compare()?.sameWay; // => true
 * evaluate({ ...build }); // throws not-read
 */
export const evaluate = (build: Build, mode?: string): Evaluation => new Evaluation(build, mode, all);
