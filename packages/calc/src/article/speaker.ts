import type { Rounding } from "../exact/index.js";
import type { Evaluation } from "../evaluate/index.js";
import { type FigureWords, type ReportWords } from "../languages/index.js";
import { figureFrom, versionFault, Writer, type FigureTable, type Others, type QueryText } from "../report/index.js";
import type { Finding } from "../stages/index.js";
import type { Build } from "../drivetrain/index.js";
import { outputFault } from "./faults.js";

/** Whoever says something of a build: its figures, in a language, in the rounding of the build. */
export interface Speaker {
  readonly evaluation: Evaluation;
  readonly locale: string;
  readonly words: FigureWords;
  readonly writer: Writer;
  /** The ids of other builds that a change can be counted from. */
  readonly others?: Others | undefined;
  /**
   * The text of a figure.
   *
   * @throws MeshwrightError where it asks for what there is not
   */
  figure(query: QueryText): string;
}

/** A speaker that knows what tables, cards and drawings say besides. A sentence needs none of it. */
export interface Reporter extends Speaker {
  readonly reports: ReportWords;
}

/** What a speaker speaks with. */
export interface Speaking {
  readonly evaluation: Evaluation;
  readonly locale: string;
  readonly words: FigureWords;
  readonly reports: ReportWords;
  readonly figures: FigureTable;
  /** Other versions of the build, for what changes; other builds too, whose ids are `others`. */
  readonly version?: ((id: string) => Evaluation | undefined) | undefined;
  readonly others?: Others | undefined;
}

/** A speaker for one version of a build, for whoever keeps no texts of its own. */
export function speakerOf({ figures, version, ...speaking }: Speaking): Reporter {
  const { evaluation, locale, words } = speaking;
  return {
    ...speaking,
    writer: writerFor(evaluation, locale, words),
    figure: (query) => figureFrom(figures, evaluation, query, { locale, words, version }),
  };
}

/** A writer in the rounding of a build. */
export const writerFor = ({ build }: Evaluation, locale: string, words: FigureWords): Writer =>
  new Writer({ rounding: build.rounding as Rounding | undefined, locale, words });

/** What keeps an element from saying anything: the author's own text stays. */
export interface Unsaid {
  readonly findings: readonly Finding[];
}

/** Whether nothing could be said, and why. */
export const isUnsaid = (said: unknown): said is Unsaid =>
  typeof said === "object" && said !== null && "findings" in said;

/** A version that is asked for by a name which none of them has. */
export function atFault(build: Build, at: string | null | undefined): Finding | undefined {
  const found = at ? versionFault(build, at) : undefined;
  return found && { ...found, at: "/at" };
}

/** The outputs that a block is about: all, or the one that it names. */
export function outputsFor({ build, outputs }: Evaluation, of: string | undefined): typeof outputs | Unsaid {
  const findings = outputFault(build, of);
  if (findings.length) return { findings };
  return of === undefined ? outputs : outputs.filter(({ id }) => id === of);
}
