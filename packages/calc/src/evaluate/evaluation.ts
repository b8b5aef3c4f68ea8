import { MeshwrightError } from "../exact/index.js";
import { isRead, type Build } from "../drivetrain/index.js";
import { Effect, findingOf, type Finding, type FindingCode, type FindingValues } from "../stages/index.js";
import { Comparison } from "./comparison.js";
import { follow, positionsOf, Situation } from "./drive.js";
import { OutputEvaluation, type Shared } from "./output.js";
import { Splitting } from "./splitting.js";

/** Whether anything in a build can be open. */
const hasDifferential = ({ centre, branches }: Build): boolean =>
  centre?.kind === "differential" || !!branches?.some(({ split }) => split?.kind === "differential");

/** What a build comes to. Nothing is worked out before it is read, and nothing twice. */
export class Evaluation {
  readonly build: Build;
  readonly mode: string | undefined;
  readonly #situation: Situation;
  #outputs: readonly OutputEvaluation[] | undefined;
  #splitting: Splitting | undefined;

  /** @throws MeshwrightError `not-read`, `mode-missing` */
  constructor(build: Build, mode?: string) {
    if (!isRead(build))
      throw new MeshwrightError(
        "not-read",
        "build",
        "Found data that has not been read; expected a build as readBuild or parseBuild gives it.",
      );
    const positions = mode === undefined ? undefined : positionsOf(build, mode);
    if (mode !== undefined && !positions)
      throw new MeshwrightError("mode-missing", "mode", `No mode "${mode}"; expected one of the build's modes.`);
    this.build = build;
    this.mode = mode;
    this.#situation = new Situation(build, positions);
  }

  get outputs(): readonly OutputEvaluation[] {
    if (!this.#outputs) {
      const { build } = this;
      const situation = this.#situation;
      const effect = new Effect();
      const trunk = { effect, turn: follow(build.stages, effect, situation) };
      const shared: Shared & { splitting: Splitting | undefined } = { situation, trunk, splitting: undefined };
      this.#outputs = build.outputs.map((output) => new OutputEvaluation(shared, output));
      if (hasDifferential(build)) {
        const splitting = new Splitting(situation, this.#outputs);
        if (splitting.isOpen) shared.splitting = this.#splitting = splitting;
      }
    }
    return this.#outputs;
  }

  /** An output by its id. */
  output(id: string): OutputEvaluation | undefined {
    return this.outputs.find((output) => output.id === id);
  }

  /** Two outputs against each other: those named, those the build compares, front and rear, or the only two. */
  compare(of?: string, other?: string): Comparison | undefined {
    const { compare } = this.build;
    const both = [of ?? compare?.of ?? "front", other ?? compare?.with ?? "rear"].map((id) => this.output(id));
    const [mine, theirs] = both[0] && both[1] ? both : of || other || this.outputs.length !== 2 ? [] : this.outputs;
    return mine && theirs && new Comparison(this.#situation, this.#splitting, mine, theirs);
  }

  /** What is odd about the drive as a whole. */
  get findings(): readonly Finding[] {
    const findings: Finding[] = [];
    const warn = (code: FindingCode, at: string, values: FindingValues) =>
      findings.push(findingOf("warning", "meaning", code, at, values));
    const first = this.outputs[0]!;
    this.outputs.forEach((output, n) => {
      if (n && new Comparison(this.#situation, this.#splitting, first, output).establishedSameWay === false)
        warn("outputs-oppose", `/outputs/${n}`, { of: first.label, with: output.label });
    });
    for (const output of this.outputs)
      if (output.locked && !output.reduction) {
        const loose = this.#splitting!.looseOn(output);
        if (loose) warn("differential-released", loose.at.pointer, { of: output.label });
        else {
          const missing = this.#splitting!.wheelless(output).map(({ label }) => label);
          warn("wheel-needed", `/outputs/${this.outputs.indexOf(output)}`, { of: output.label, missing });
        }
      }
    return findings;
  }
}

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
 * evaluation.output("rear").bounds.toDecimals({ maximumFractionDigits: 2 }); // => { low: "30.74", high: "31.95" }
 * evaluation.output("rear").turns; // => "not known"
 * evaluation.compare().difference("tyres").low.toFraction(); // => "85/2736"
 * evaluation.compare().sameWay; // => true
 * evaluate({ ...build }); // throws not-read
 */
export const evaluate = (build: Build, mode?: string): Evaluation => new Evaluation(build, mode);
