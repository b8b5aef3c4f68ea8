import { bounded, MeshwrightError, rational, type Bounded, type Rational } from "../exact/index.js";
import type { Build } from "../drivetrain/index.js";
import { Effect, findingOf, type Finding, type FindingCode, type FindingValues } from "../stages/index.js";
import { Comparison } from "./comparison.js";
import { follow, positionsOf } from "./drive.js";
import { OutputEvaluation, type Shared } from "./output.js";

/** What a build comes to. Nothing is worked out before it is read, and nothing twice. */
export class Evaluation {
  readonly build: Build;
  readonly mode: string | undefined;
  readonly #positions: Readonly<Record<string, string>> | undefined;
  #outputs: readonly OutputEvaluation[] | undefined;

  constructor(build: Build, mode?: string) {
    this.build = build;
    this.mode = mode;
    this.#positions = mode === undefined ? undefined : positionsOf(build, mode);
    if (mode !== undefined && !this.#positions)
      throw new MeshwrightError("mode-missing", "mode", `No mode "${mode}"; expected one of the build's modes.`);
  }

  get outputs(): readonly OutputEvaluation[] {
    if (!this.#outputs) {
      const { build } = this;
      const positions = this.#positions;
      const effect = new Effect();
      const trunk = { effect, turn: follow(build.stages, effect, positions) };
      const shared: Shared = { build, positions, trunk, centre: (output) => this.#centre(output) };
      this.#outputs = build.outputs.map((output) => new OutputEvaluation(shared, output));
    }
    return this.#outputs;
  }

  /** An output by its id. */
  output(id: string): OutputEvaluation | undefined {
    return this.outputs.find((output) => output.id === id);
  }

  /** Each output's part of the torque at an open centre differential, the parts together 1. */
  share(output: OutputEvaluation): Rational {
    const split = this.outputs.filter((other) => !other.output.motor);
    const said = split.map((other) => rational(this.build.centre?.share?.[other.id] ?? 1));
    return said[split.indexOf(output)]!.over(said.reduce((sum, part) => sum.plus(part)));
  }

  #centre(output: OutputEvaluation): Rational | 1 | undefined {
    if (this.build.centre?.kind !== "differential" || output.output.motor) return 1;
    const others = this.outputs.filter((other) => other !== output && !other.output.motor);
    if (others.every((other) => other.state === "driven")) return 1;
    // The motor turns are the share-weighted sum of what the outputs turn: a held one adds nothing, and a free one takes
    // whatever it likes.
    return others.every((other) => other.state === "held") ? this.share(output) : undefined;
  }

  /** Motor turns for one turn of every wheel, straight on with an open centre differential: the share-weighted mean. */
  get straightOn(): Bounded | undefined {
    const split = this.outputs.filter((output) => !output.output.motor);
    if (this.build.centre?.kind !== "differential" || split.some((output) => !output.locked)) return undefined;
    return split.reduce((sum, output) => sum.plus(output.locked!.bounds.times(this.share(output))), bounded(0));
  }

  /** Two outputs against each other: those named, those the build compares, front and rear, or the only two. */
  compare(of?: string, other?: string): Comparison | undefined {
    const { compare } = this.build;
    const both = [of ?? compare?.of ?? "front", other ?? compare?.with ?? "rear"].map((id) => this.output(id));
    const [mine, theirs] = both[0] && both[1] ? both : of || other || this.outputs.length !== 2 ? [] : this.outputs;
    return mine && theirs && new Comparison(this.build, this.#positions, mine, theirs);
  }

  /** What is odd about the drive as a whole. */
  get findings(): readonly Finding[] {
    const findings: Finding[] = [];
    const warn = (code: FindingCode, at: string, values: FindingValues) =>
      findings.push(findingOf("warning", "meaning", code, at, values));
    const first = this.outputs[0]!;
    this.outputs.forEach((output, n) => {
      if (n && new Comparison(this.build, this.#positions, first, output).sameWay === false)
        warn("outputs-oppose", `/outputs/${n}`, { of: first.label, with: output.label });
    });
    for (const output of this.outputs)
      if (output.locked && !output.reduction) warn("differential-released", "/centre", { of: output.label });
    return findings;
  }
}

/**
 * Works a build out, as selected or in one of its modes. Lazy: reading two totals costs two totals.
 *
 * @throws MeshwrightError `mode-missing` where the build has no such mode
 *
 * @example
 * import { evaluate } from "@meshwright/calc/evaluate";
 * const stages = [{ id: "spur", kind: "pair", driver: 15, driven: 62 }, { id: "box", kind: "published", value: "2.6" }];
 * const front = { id: "front", stages: [{ id: "front-ring", kind: "pair", driver: 13, driven: 38 }], wheel: { diameter: "124 mm" } };
 * const rear = { id: "rear", stages: [{ id: "rear-ring", kind: "pair", driver: 12, driven: 35 }], wheel: { diameter: "120 mm" } };
 * const evaluation = evaluate({ format: "meshwright-build/1", stages, outputs: [front, rear] });
 * evaluation.output("rear").bounds.toDecimals({ maximumFractionDigits: 2 }); // => { low: "30.74", high: "31.95" }
 * evaluation.output("rear").turns; // => "not known"
 * evaluation.compare().difference("tyres").low.toFraction(); // => "85/2736"
 * evaluation.compare().sameWay; // => true
 */
export const evaluate = (build: Build, mode?: string): Evaluation => new Evaluation(build, mode);
