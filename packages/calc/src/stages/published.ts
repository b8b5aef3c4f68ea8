import { rational } from "../exact/index.js";
import type { Check, Direction, Display, Drawn, Effects, Needs, Notation, Sample, Shape } from "./facets.js";
import { printedInterval } from "./printed.js";
import type { StageBase } from "./stage.js";

/** A ratio known only as somebody printed it. A fraction, or `exact: true`, is exact; anything else is an interval. */
export interface PublishedStage extends StageBase {
  readonly kind: "published";
  readonly value: string;
  readonly read?: "rounded" | "truncated" | "unsure";
  readonly exact?: boolean;
}

/** Whether the value stands for itself alone. */
const isExact = (stage: PublishedStage): boolean => stage.exact === true || stage.value.includes("/");

/** "19:1" is how boxes print 19. */
const plain = (value: string): string => value.replace(/ ?: ?1$/, "");

export const shape: Shape = { value: "ratio!", read: "rounded|truncated|unsure", exact: "flag" };

export const sample: Sample = { value: "2.60" };

export const check: Check<PublishedStage> = (stage, say) => {
  if (!isExact(stage) && !stage.value.includes(".")) say("warning", "ratio-nominal", "value", { value: stage.value });
};

export const effect: Effects<PublishedStage> = (stage, into) => {
  const value = plain(stage.value);
  if (isExact(stage)) {
    const { numerator, denominator } = rational(value);
    into.times(Number(numerator), Number(denominator));
  } else {
    // Keyed by stage and by what it says: the same box before and after a change is the same unknown.
    into.unknown(`${stage.id} ${value} ${stage.read ?? "rounded"}`, printedInterval(value, stage.read));
  }
};

export const direction: Direction<PublishedStage> = { turn: () => 0, isSaid: () => false };

export const notation: Notation<PublishedStage> = {
  examples: ["printed 2.74"],
  parse(text) {
    const [, value] = /^printed (\S+)$/.exec(text) ?? [];
    return value ? { value } : undefined;
  },
  write: ({ value }) => `printed ${value}`,
};

export const display: Display<PublishedStage> = ({ value }) => [{ word: "printed" }, { value, field: "value" }];

export const needs: Needs<PublishedStage> = ({ value }) => ({ whole: { is: ["gearbox"], value } });

export const drawn: Drawn<PublishedStage> = () => undefined;
