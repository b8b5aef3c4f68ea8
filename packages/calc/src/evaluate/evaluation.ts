import { MeshwrightError } from "../exact/index.js";
import { isRead, type Build } from "../drivetrain/index.js";
import { Effect, type Finding } from "../stages/index.js";
import { Comparison } from "./comparison.js";
import { follow, positionsOf, Situation } from "./drive.js";
import { OutputEvaluation, type OutputFurther, type Shared } from "./output.js";
import type { Axle, Splitting } from "./splitting.js";

/** Whether anything in a build can be open. */
const hasDifferential = ({ centre, branches }: Build): boolean =>
  centre?.kind === "differential" || !!branches?.some(({ split }) => split?.kind === "differential");

/** What is worked out beside totals: given to an evaluation, so that a page which shows none of it need not load it. */
export interface Further extends OutputFurther {
  readonly findings: (
    outputs: readonly OutputEvaluation[],
    oppose: (one: OutputEvaluation, other: OutputEvaluation) => boolean,
    splitting: Splitting | undefined,
  ) => readonly Finding[];
  /** How the drive splits where a differential may be open. */
  readonly split: (situation: Situation, outputs: readonly Axle[]) => Splitting;
}

/** What a build comes to. Nothing is worked out before it is read, and nothing twice. */
export class Evaluation {
  readonly build: Build;
  readonly mode: string | undefined;
  readonly #situation: Situation;
  #outputs: readonly OutputEvaluation[] | undefined;
  #splitting: Splitting | undefined;

  readonly #further: Further;

  /** @throws MeshwrightError `not-read`, `mode-missing` */
  constructor(build: Build, mode: string | undefined, further: Further) {
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
    this.#further = further;
  }

  get outputs(): readonly OutputEvaluation[] {
    if (!this.#outputs) {
      const { build } = this;
      const situation = this.#situation;
      const effect = new Effect();
      const trunk = { effect, released: follow(build.stages, effect, situation) };
      const further = this.#further;
      const shared: Shared & { splitting: Splitting | undefined } = { situation, trunk, further, splitting: undefined };
      this.#outputs = build.outputs.map((output) => new OutputEvaluation(shared, output));
      if (hasDifferential(build)) {
        const splitting = further.split(situation, this.#outputs);
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
    const { outputs } = this;
    const oppose = (one: OutputEvaluation, other: OutputEvaluation) =>
      new Comparison(this.#situation, this.#splitting, one, other).establishedSameWay === false;
    return this.#further.findings(outputs, oppose, this.#splitting);
  }

  /** Another build, worked out in the same mode and as far. */
  again(build: Build): Evaluation {
    return new Evaluation(build, this.mode, this.#further);
  }
}

const missing = (): never => {
  throw new MeshwrightError("not-worked-out", "build", "Found totals only; expected evaluate().");
};

/**
 * Works a build out as far as its totals go: reductions, directions and differences of outputs that no differential
 * lets turn apart. Its steps, groups and findings, and differentials, throw `not-worked-out`. For pages that show totals first, and load what tells all else afterwards.
 *
 * @param build as `readBuild` or `parseBuild` gave it
 * @throws MeshwrightError `not-read`, `mode-missing`
 *
 * @example
 * import { totalsOf } from "@meshwright/calc/evaluate";
 * const build = parseBuild({ format: "meshwright-build/1", outputs: [{ id: "rear", stages: [{ id: "ring", kind: "pair", driver: 12, driven: 35 }] }] });
 * totalsOf(build).output("rear")?.bounds?.low.toFraction(); // => "35/12"
 * totalsOf(build).output("rear")?.steps; // throws not-worked-out
 */
export const totalsOf = (build: Build, mode?: string): Evaluation =>
  new Evaluation(build, mode, { steps: missing, groups: missing, findings: missing, split: missing });
