import { rational } from "../exact/index.js";
import type {
  Check,
  Direction,
  Display,
  Drawn,
  Effects,
  Needs,
  Notation,
  Sample,
  Shape,
  Sure,
  Unknowns,
} from "./facets.js";
import { plainRatio, printedInterval } from "./printed-interval.js";
import type { StageBase } from "./stage.js";

/** A ratio known only as somebody printed it. A fraction, or `exact: true`, is exact; anything else is an interval. */
export interface PrintedStage extends StageBase {
  /** What kind of stage it is. */
  readonly kind: "published";
  /** Motor-side turns for one turn of the output, as printed: "2.74", "19:1", "52/19". */
  readonly value: string;
  /** How it was shortened: to the nearest digit (where it is not said), cut off, or nobody knows. */
  readonly read?: "rounded" | "truncated" | "unsure";
  /** The value stands for itself alone. */
  readonly exact?: boolean;
  /** The id of a stage that holds the same bought thing: what is not known of both is one unknown. */
  readonly sameAs?: string;
}

/** Whether the value stands for itself alone. */
const isExact = (stage: PrintedStage): boolean => stage.exact === true || stage.value.includes("/");

export const shape: Shape = { value: "ratio!", read: "rounded|truncated|unsure", exact: "flag", sameAs: "id" };

export const sample: Sample = { value: "2.60" };

export const check: Check<PrintedStage> = (stage, say) => {
  if (!isExact(stage) && !stage.value.includes(".")) say("warning", "ratio-nominal", "value", { value: stage.value });
};

export const unknown: Unknowns<PrintedStage> = {
  text: (stage) => `${plainRatio(stage.value)} ${isExact(stage) ? "exact" : (stage.read ?? "rounded")}`,
  sameAs: ({ sameAs }) => sameAs,
  spans: () => [],
};

export const sure: Sure<PrintedStage> = () => true;

export const effect: Effects<PrintedStage> = (stage, into, surroundings) => {
  const value = plainRatio(stage.value);
  // Named after the product and what it says: the same box before and after a change is the same unknown.
  if (isExact(stage)) into.exactly(rational(value));
  else into.unknown(`${surroundings.namesake(stage)} ${unknown.text(stage)}`, printedInterval(value, stage.read));
};

export const direction: Direction<PrintedStage> = { turn: () => 0, isSaid: () => false };

export const notation: Notation<PrintedStage> = {
  examples: ["printed 2.74"],
  parse(text) {
    const [, value] = /^printed (\S+)$/.exec(text) ?? [];
    return value ? { value } : undefined;
  },
  write: ({ value }) => `printed ${value}`,
};

export const display: Display<PrintedStage> = ({ value }) => [{ word: "printed" }, { value, field: "value" }];

export const needs: Needs<PrintedStage> = ({ value }) => ({ whole: { is: ["gearbox"], value } });

export const drawn: Drawn<PrintedStage> = () => undefined;
