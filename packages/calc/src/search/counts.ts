import { applyChanges } from "../document/index.js";
import { type Build, type Part, setOf, spotOf, valueAt } from "../drivetrain/index.js";
import { type Evaluation, evaluate } from "../evaluate/index.js";
import { type Bounded, bounded, type Rational, rational, type RationalInput } from "../exact/index.js";
import { speedsOf, type SpeedUnit } from "../motion/index.js";
import { canBeHad, fittedTo, isOfForm, needsOfStage } from "../parts/index.js";
import { pickedSet, type Setting, takePair } from "./take.js";

/** What is wanted of an output: a figure, and its value. */
export type WantedFigure = {
  /** The output's id. */
  readonly of: string;
  /** Above zero: motor turns for one wheel turn, millimetres for one motor turn, a speed in the unit; a lead is a share above −1. */
  readonly value: RationalInput;
} & (
  | { readonly figure: "reduction" | "travel" }
  | { readonly figure: "speed"; readonly unit: SpeedUnit }
  /** How much farther the output rolls than another, as a share of the other; by the gears alone where a wheel is not given. */
  | { readonly figure: "lead"; readonly with: string }
);

/** One count, set or tyre, and how near it comes. */
export interface CountChoice {
  readonly choice: number | Part;
  /** The changes of one edit that put it there. */
  readonly settings: readonly Setting[];
  /** What was wanted, as it gives it. */
  readonly gives: Bounded;
  /** What it gives over what was wanted, minus one; of a lead, the one less the other. */
  readonly off: Bounded;
}

/** The counts on either side of what is wanted, and the one that would be exact. */
export interface CountsFound {
  /** What would give exactly what is wanted, where that follows from a simple proportion: a count, or a tyre's diameter in millimetres. */
  readonly exact?: Bounded;
  /** On either side of it, in rising order of what they give; one alone where it is met, or where there is nothing beyond. */
  readonly neighbours: readonly CountChoice[];
}

/** Why there is no count to look for: no such address, nothing to choose from, nothing that it changes, or a figure that the build does not say enough for. */
export type NotCounted = "no-address" | "no-choices" | "no-effect" | "not-known";

const most = 1_000_000;

/** What is wanted, as a build has it now: above zero. A lead is counted from one. */
export function figureNow(evaluation: Evaluation, wanted: WantedFigure): Bounded | undefined {
  const output = evaluation.output(wanted.of);
  if (!output?.reduction) return undefined;
  switch (wanted.figure) {
    case "reduction":
      return output.bounds;
    case "travel":
      return output.travel?.bounds;
    case "speed":
      return speedsOf(evaluation.build, output).full?.[wanted.unit];
    case "lead": {
      const pair = evaluation.compare(wanted.of, wanted.with);
      const isRolled = pair?.of.output.wheel && pair.with.output.wheel;
      return pair?.difference(isRolled ? "tyres" : "gears")?.plus(1);
    }
  }
}

/** The build with one change, worked out; nothing where it would not be a build. */
function tried(evaluation: Evaluation, settings: readonly Setting[]): Evaluation | undefined {
  const changes = Object.fromEntries(settings.map(({ set, to }) => [set, to]));
  const { build } = applyChanges(evaluation.build, changes);
  return build && evaluate(build, evaluation.mode);
}

class Goal {
  readonly #evaluation: Evaluation;
  readonly #wanted: WantedFigure;
  /** What has to be met: of a lead, one more. */
  readonly value: Rational;

  constructor(evaluation: Evaluation, wanted: WantedFigure) {
    this.#evaluation = evaluation;
    this.#wanted = wanted;
    const value = rational(wanted.value);
    this.value = wanted.figure === "lead" ? value.plus(1) : value;
  }

  of(settings: readonly Setting[]): Bounded | undefined {
    const made = tried(this.#evaluation, settings);
    return made && figureNow(made, this.#wanted);
  }

  judge(choice: number | Part, settings: readonly Setting[], figure: Bounded): CountChoice {
    const { value } = this;
    if (this.#wanted.figure === "lead") return { choice, settings, gives: figure.minus(1), off: figure.minus(value) };
    return { choice, settings, gives: figure, off: figure.over(value).minus(1) };
  }

  /** The nearest below and above, or the one that meets it. */
  nearest(choices: readonly CountChoice[], figureOf: (one: CountChoice) => Bounded): CountChoice[] {
    const sorted = [...choices].sort((a, b) => figureOf(a).low.compare(figureOf(b).low));
    const below = sorted.filter((one) => figureOf(one).high.compare(this.value) <= 0).at(-1);
    const above = sorted.find((one) => figureOf(one).low.compare(this.value) >= 0);
    return [...new Set([below, above])].filter((one) => one !== undefined);
  }
}

/** What would meet a goal exactly, where the figure grows with what is changed, or falls as it grows, in proportion. */
function exactly(goal: Goal, now: Rational, at: (value: Rational) => Bounded | undefined): Bounded | undefined {
  const [one, two] = [at(now), at(now.times(2))];
  if (!one || !two) return undefined;
  const quotient = two.over(one);
  const is = (share: RationalInput) => one.low.times(share).equals(two.low) && one.high.times(share).equals(two.high);
  if (!quotient.low.sign) return undefined;
  if (is(2)) return bounded(goal.value).over(one).times(now);
  return is("1/2") ? one.over(goal.value).times(now) : undefined;
}

/** The counts on either side of the goal at an address: the figure rises or falls with the count all the way. */
function countsAt(goal: Goal, address: string, now: number): CountsFound | NotCounted {
  const known = new Map<number, Bounded | undefined>();
  const settings = (count: number): Setting[] => [{ set: address, to: count }];
  const at = (count: number): Bounded | undefined => {
    if (count < 1 || count > most) return undefined;
    if (!known.has(count)) known.set(count, goal.of(settings(count)));
    return known.get(count);
  };
  const first = at(now);
  if (!first) return "not-known";
  const beside = [now + 1, now - 1].find((count) => at(count));
  if (beside === undefined) return "no-choices";
  const step = at(beside)!.low.compare(first.low) * (beside - now);
  if (!step) return "no-effect";
  /** Whether a count lies on the near side of the goal, in the direction in which counts are tried. */
  const isBelow = (count: number): boolean => at(count)!.high.compare(goal.value) <= 0;
  const isAbove = (count: number): boolean => at(count)!.low.compare(goal.value) >= 0;
  /** The last count, going one way, of which something holds; the way is doubled until it no longer does. */
  const last = (from: number, way: 1 | -1, holds: (count: number) => boolean): number => {
    let good = from;
    let reach = 1;
    while (at(good + way * reach) && holds(good + way * reach)) {
      good += way * reach;
      reach *= 2;
    }
    for (; reach >= 1; reach = Math.floor(reach / 2)) {
      const next = good + way * reach;
      if (at(next) && holds(next)) good = next;
    }
    return good;
  };
  const up = step > 0 ? 1 : -1;
  const found: CountChoice[] = [];
  const add = (count: number, holds: (count: number) => boolean) => {
    const figure = at(count);
    if (figure && holds(count) && !found.some(({ choice }) => choice === count))
      found.push(goal.judge(count, settings(count), figure));
  };
  // From a count on the far side, the near side is walked into as far as need be.
  const isNotBelow = (count: number) => !isBelow(count);
  const isNotAbove = (count: number) => !isAbove(count);
  add(isBelow(now) ? last(now, up, isBelow) : last(now, -up as 1 | -1, isNotBelow) - up, isBelow);
  add(isAbove(now) ? last(now, -up as 1 | -1, isAbove) : last(now, up, isNotAbove) + up, isAbove);
  const exact = exactly(goal, rational(now), (count) => at(count.toNumber()));
  return { ...(exact && { exact }), neighbours: found };
}

/** The sets of a list of parts that a stage which is sold as one could be. */
function setsFor(build: Build, id: string): readonly (readonly [Part, readonly Setting[]])[] {
  const stage = spotOf(build, id)!.stage!;
  const { together } = needsOfStage(stage);
  if (!together) return [];
  const { spec } = together;
  const isHere = (part: Part) =>
    (part.stage === undefined || part.stage === id) &&
    isOfForm(part, spec) &&
    (canBeHad(part) !== false || part.status === "fitted" || fittedTo(stage).includes(part.id));
  return (build.parts ?? [])
    .filter((part) => spec.is.includes(part.is) && part.driver && part.driven && isHere(part))
    .map((part) => [part, takePair(build, id, pickedSet(part))]);
}

/** Of some parts, those that come nearest. */
function partsNear(
  goal: Goal,
  choices: readonly (readonly [Part, readonly Setting[]])[],
): readonly CountChoice[] | NotCounted {
  if (!choices.length) return "no-choices";
  const figures = new Map<CountChoice, Bounded>();
  for (const [part, settings] of choices) {
    const figure = goal.of(settings);
    if (figure) figures.set(goal.judge(part, settings, figure), figure);
  }
  if (!figures.size) return "not-known";
  return goal.nearest([...figures.keys()], (one) => figures.get(one)!);
}

/**
 * Which count, set or tyre gives what is wanted of an output: those on either side, with how far off they are. Every one is
 * tried in the build itself, so that whatever else stands in it, open differentials and levers too, is reckoned with.
 *
 * @param address a count of a stage (`primary.driver`), a stage whose gears are sold as a set, or an output's wheel (`rear.wheel`);
 * sets and tyres come from the build's parts
 * @throws MeshwrightError where the value cannot be read
 *
 * @example
 * const stages = [{ id: "spur", kind: "pair", driver: 15, driven: 62 } as const];
 * const outputs = [{ id: "rear", stages: [], wheel: { diameter: "2.25 in" } } as const];
 * const evaluation = evaluate(parseBuild({ format: "meshwright-build/1", stages, outputs }));
 * const found = countsFor(evaluation, "spur.driver", { figure: "reduction", of: "rear", value: "3.7" }) as CountsFound;
 * found.neighbours.map(({ choice, gives }) => [choice, gives.low.toFraction()]); // => [[17, "62/17"], [16, "31/8"]]
 * found.exact!.low.toFraction(); // => "620/37"
 */
export function countsFor(evaluation: Evaluation, address: string, wanted: WantedFigure): CountsFound | NotCounted {
  const { build } = evaluation;
  const goal = new Goal(evaluation, wanted);
  const [id, field] = address.split(".") as [string, string?];
  if (field === "wheel" && address === `${id}.wheel`) {
    const output = evaluation.output(id);
    if (!output) return "no-address";
    const wheels = (build.parts ?? []).filter(
      (part) => part.is === "wheel" && part.diameter !== undefined && canBeHad(part) !== false,
    );
    const put = (diameter: string): Setting[] => [{ set: address, to: { diameter } }];
    const exact = exactly(goal, rational(100), (size) => goal.of(put(`${size.toFraction()} mm`)));
    const near = partsNear(
      goal,
      wheels.map((part) => [part, put(part.diameter!)]),
    );
    if (typeof near === "string") return exact && near === "no-choices" ? { exact, neighbours: [] } : near;
    return { ...(exact && { exact }), neighbours: near };
  }
  const stage = spotOf(build, id)?.stage;
  if (!stage || stage.id !== id) return "no-address";
  if (address === id) {
    if (!setOf(stage)) return "no-address";
    const near = partsNear(goal, setsFor(build, id));
    return typeof near === "string" ? near : { neighbours: near };
  }
  const now = valueAt(build, address);
  return typeof now === "number" ? countsAt(goal, address, now) : "no-address";
}
