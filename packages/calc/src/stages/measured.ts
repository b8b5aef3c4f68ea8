import { bounded, rational, type Bounded } from "../exact/index.js";
import type { Numeric } from "../gears/index.js";
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
import type { StageBase } from "./stage.js";

/**
 * A box known by turning it and counting. Reduction: `turnsIn` / `turnsOut`, doubled where one wheel was held, and divided by
 * that of the stages that were turned along with it.
 */
export interface MeasuredStage<S = StageBase> extends StageBase {
  /** What kind of stage it is. */
  readonly kind: "measured";
  /** Turns of the side towards the motor, exactly. */
  readonly turnsIn: Numeric;
  /** Turns of the side towards the wheels: from and to, or so many exactly where two marks came together again. */
  readonly turnsOut:
    | Numeric
    | {
        /** The fewest turns that they can have been, above 0. */
        readonly from: Numeric;
        /** The most turns that they can have been. */
        readonly to: Numeric;
      };
  /** One wheel of an open axle was held, so that the other one, which was counted, turned twice. */
  readonly held?: boolean;
  /** The stages that were turned along with it, as they were then: a later swap changes nothing about what was counted. */
  readonly spans?: readonly S[];
  /** The id of a stage that holds the same bought thing, of which the same count is told. */
  readonly sameAs?: string;
}

/** Both ends of what was counted at the wheels. */
const endsOf = ({ turnsOut }: MeasuredStage): readonly [from: Numeric, to: Numeric] =>
  typeof turnsOut === "object" ? [turnsOut.from, turnsOut.to] : [turnsOut, turnsOut];

/** What was counted, as a reduction of all that turned. */
function counted(stage: MeasuredStage): Bounded {
  const [from, to] = endsOf(stage);
  return bounded(rational(stage.turnsIn).times(stage.held ? 2 : 1)).over(bounded(from, to));
}

export const shape: Shape = {
  turnsIn: "positive!",
  turnsOut: "span!",
  held: "flag",
  spans: "[stage]1-100",
  sameAs: "id",
};

export const sample: Sample = { turnsIn: 20, turnsOut: { from: "7.2", to: "7.3" } };

export const check: Check<MeasuredStage> = (stage, say) => {
  const [from, to] = endsOf(stage);
  if (rational(from).compare(to) > 0) say("error", "range-backwards", "turnsOut", { from, to });
};

export const unknown: Unknowns<MeasuredStage> = {
  text(stage) {
    const ends = [stage.turnsIn, ...endsOf(stage)].map((turns) => rational(turns).toFraction());
    return [...ends, stage.held ? "held" : "", stage.spans ? JSON.stringify(stage.spans) : ""].join(" ");
  },
  sameAs: ({ sameAs }) => sameAs,
  spans: ({ spans = [] }) => spans,
};

export const sure: Sure<MeasuredStage> = (stage) => {
  const [from, to] = endsOf(stage);
  return rational(from).compare(to) <= 0;
};

export const effect: Effects<MeasuredStage> = (stage, into, surroundings) => {
  const reduction = counted(stage);
  if (reduction.isExact) into.exactly(reduction.low);
  else into.unknown(`${surroundings.namesake(stage)} ${unknown.text(stage)}`, reduction);
  for (const other of stage.spans ?? []) surroundings.divide(into, other);
};

export const direction: Direction<MeasuredStage> = { turn: () => 0, isSaid: () => false };

const number = String.raw`\d+(?:\.\d+|/\d+)?`;
const written = new RegExp(`^turned (${number}) for (${number})(?: to (${number}))?$`);

export const notation: Notation<MeasuredStage> = {
  examples: ["turned 20 for 7.2 to 7.3", "turned 57 for 11"],
  parse(text) {
    const [, turnsIn, from, to] = written.exec(text) ?? [];
    return turnsIn ? { turnsIn, turnsOut: to ? { from, to } : from } : undefined;
  },
  write(stage) {
    const [from, to] = endsOf(stage);
    return `turned ${stage.turnsIn} for ${from}${typeof stage.turnsOut === "object" ? ` to ${to}` : ""}`;
  },
};

export const display: Display<MeasuredStage> = (stage) => {
  const { turnsIn, turnsOut } = stage;
  const input = [{ word: "turned" }, { value: turnsIn, field: "turnsIn" }, { word: "for" }] as const;
  return typeof turnsOut === "object"
    ? [
        ...input,
        { value: turnsOut.from, field: "turnsOut.from" },
        { word: "up to" },
        { value: turnsOut.to, field: "turnsOut.to" },
      ]
    : [...input, { value: turnsOut, field: "turnsOut" }];
};

/** Whoever has turned a box has it, and what it is sold as is not said. */
export const needs: Needs<MeasuredStage> = () => ({});

export const drawn: Drawn<MeasuredStage> = () => undefined;
