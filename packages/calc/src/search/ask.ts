import { applyChanges } from "../document/index.js";
import { type Build, oneIn, type Part } from "../drivetrain/index.js";
import {
  evaluate,
  type Evaluation,
  type OutputEvaluation,
  pi,
  type Quantity,
  quantityOf,
  rolledBy,
} from "../evaluate/index.js";
import { comparePitch, moduleOf, type Toothed, type ToothPair } from "../gears/index.js";
import { type Bounded, rational, type Rational } from "../exact/index.js";
import {
  canBeHad,
  currencyOf,
  isOfForm,
  type Need,
  needsOf,
  needsOfStage,
  type Stock,
  stockFor,
} from "../parts/index.js";
import { drawings, Effect, effects, type Stage } from "../stages/index.js";
import type { Order } from "./batch.js";
import type { GearChoice, PairQuestion, TrainQuestion, WantedOutput } from "./question.js";
import type { WantedPairTotal } from "./wanted.js";

/**
 * Among which gears a search looks: all parts, those that can be had or of which nobody has said, those that are there; or
 * any counts of the stage's own pitch, without a list: 6 to 60 teeth driving 6 to 120.
 */
export type Among = "all" | "had" | "owned" | "counts";

const countsUpTo = (most: number): number[] => Array.from({ length: most - 5 }, (_, n) => n + 6);

/** How a build is asked for gears. */
export interface Asking {
  /** Those of the build where none are given. */
  readonly parts?: readonly Part[];
  /** `had` where not given. */
  readonly among?: Among;
  /** Whether sleeves and plates may be used; they may where it is not given. */
  readonly adapters?: boolean;
  readonly order?: Order;
  /** The state that an order is counted from; the build itself where not given. */
  readonly before?: Build;
  readonly signal?: { readonly aborted: boolean };
}

export interface TrainAsking extends Asking {
  /** Outputs whose wheels are chosen too. */
  readonly wheels?: readonly string[];
  /** How much farther one output may roll than another, as a share of the other. */
  readonly compare?: Omit<NonNullable<TrainQuestion["compare"]>, "rest" | "tyres">;
}

/**
 * Why there is nothing to look for: no such stage, one that is no pair of gears, one that drives nothing, no range for what it
 * drives; of several stages at once, one behind an open differential, where totals are sums and no products.
 */
export type NotAsked = "no-stage" | "not-a-pair" | "not-driven" | "no-range" | "open-differential";

/** What a build has, and how it is asked. */
interface Shop {
  readonly build: Build;
  readonly parts: readonly Part[];
  readonly needs: readonly Need[];
  readonly stock: Stock;
  readonly asking: Asking;
}

function shopOf(build: Build, places: readonly string[], asking: Asking): Shop {
  const { parts = build.parts ?? [], before } = asking;
  const needs = needsOf(build, parts);
  const start = before ? needsOf(before, parts) : needs;
  return { build, parts, needs, asking, stock: stockFor(start, needs, places) };
}

/** Whether so many pieces of a part are among those that are looked at. */
function isAmong({ stock, asking: { among = "had" } }: Shop, part: Part, pieces: number): boolean {
  if (among === "all" || among === "counts") return true;
  const lacking = stock.lineFor(part, pieces).pieces;
  return among === "owned" ? lacking <= 0 : canBeHad(part, lacking) !== false;
}

/** Whether a part can go into a stage: one that is meant for another has to be known to be of a pitch. */
function suits(part: Part, stage: Stage, only: boolean): boolean {
  if (part.stage === stage.id) return true;
  const pitch = stage as Toothed;
  const isSet = part.driver !== undefined;
  if (part.stage !== undefined) return isSet ? comparePitch(part, pitch)?.pitch === "same" : !!moduleOf(part);
  return !isSet || only || !!moduleOf(part) || !moduleOf(pitch);
}

/**
 * A stage as a search looks at it: whoever has just taken a set in the place of two gears may go back to two gears. Sold
 * together and not otherwise is what the author says it is.
 */
function asPublished(stage: Stage, before: Build | undefined): Stage {
  const published = before && oneIn(before)(stage.id)?.stage;
  const isLoose =
    published?.kind === stage.kind && !!needsOfStage(published).together && !needsOfStage(published).together!.only;
  return isLoose ? ({ ...stage, set: undefined } as Stage) : stage;
}

const alone = { namesake: ({ id }: { readonly id: string }) => id, divide: () => undefined };

/** What a stage does with other counts. */
function reductionWith(stage: Stage, [first, second]: readonly string[], driver: number, driven: number): Rational {
  const effect = new Effect(true);
  effects[stage.kind]({ ...stage, [first!]: driver, [second!]: driven } as Stage, effect, alone);
  return effect.factor;
}

/** Of sets that are more than a driver and what it drives, what each does, and would do with one tooth more on the driver. */
function reductionsOf(stage: Stage, sets: readonly Part[]): GearChoice["reductions"] {
  const { fields, pair } = needsOfStage(stage).together!;
  if (pair) return undefined;
  return sets.map(({ driver, driven }) => [
    reductionWith(stage, fields, driver!, driven!),
    reductionWith(stage, fields, driver! + 1, driven!),
  ]);
}

/** What a stage of a build could be. */
function choiceOf(shop: Shop, id: string): (GearChoice & { readonly id: string }) | NotAsked {
  const { build, parts, needs, asking } = shop;
  const now = oneIn(build)(id)?.stage;
  if (now?.id !== id) return "no-stage";
  const stage = asPublished(now, asking.before);
  const { together, each } = needsOfStage(stage);
  if (!together) return "not-a-pair";
  const { only, plain, spec, pair, beside } = together;
  const { internal, form, helixAngle, module, diametralPitch, pressureAngle } = stage as ToothPair & Stage;
  const pieces = needs.find((need) => need.stage === id)!.pieces;
  const of = (kinds: readonly Part["is"][], counted: keyof Part) =>
    parts.filter(
      (part) =>
        kinds.includes(part.is) &&
        part[counted] !== undefined &&
        suits(part, stage, only) &&
        isAmong(shop, part, pieces),
    );
  const mount = build.mounts?.find((one) => one.stage === id);
  // Nobody has said that these are spur gears: then any gears may go there that are meant for it.
  const isSaid = mount !== undefined || drawings[stage.kind](stage) !== undefined;
  const loose = (kinds: readonly Part["is"][]) =>
    plain && !only
      ? of(kinds, "teeth").filter((part) => (isSaid || part.stage === id) && (part.form ?? "spur") === "spur")
      : [];
  const { shaft, steps, drivenShaft, hubHoles, reach, line } = mount ?? {};
  const held = { shaft, steps, drivenShaft, hubHoles, reach, line } as NonNullable<GearChoice["mount"]>;
  const isBare = asking.among === "counts";
  // A worm's starts, or gears that only come together, are no counts that anybody could choose.
  const areGears = !only && each.length === 2 && each.every(({ is }) => is.includes("gear"));
  const bare = (most: number) => (areGears ? countsUpTo(most) : []);
  const sets = isBare ? [] : of(spec.is, "driver").filter((part) => part.driven !== undefined && isOfForm(part, spec));
  const reductions = reductionsOf(stage, sets);
  const adapters = asking.adapters === false ? [] : parts.filter(({ is }) => is === "sleeve" || is === "plate");
  return {
    id,
    pieces,
    drivers: isBare ? bare(60) : loose(each[0]?.is ?? []),
    drivens: isBare ? bare(120) : loose(each[1]?.is ?? []),
    sets,
    ...(reductions && { reductions }),
    ...(!pair && { whole: true }),
    ...(form !== undefined && { form }),
    ...(helixAngle !== undefined && { helixAngle }),
    adapters: adapters.filter((part) => isAmong(shop, part, pieces)),
    pitch: {
      ...(module !== undefined && { module }),
      ...(diametralPitch !== undefined && { diametralPitch }),
      ...(pressureAngle !== undefined && { pressureAngle }),
    },
    // What does not stand beside each other has no centre distance that a slot could be held against.
    ...(mount && { mount: beside ? mount : held }),
    ...(internal && { internal }),
  };
}

/** What some stages come to on the way to an output; nothing where none of them is on it. */
function ownOf({ steps }: OutputEvaluation, ids: readonly string[]): Quantity | undefined {
  const own = steps.filter(({ stage }) => ids.includes(stage.id));
  return own.length
    ? own.reduce((product, { reduction }) => product.times(reduction), quantityOf(rational(1), []))
    : undefined;
}

/**
 * What an output's total is made of where a differential is open, straight on: what the stage turns into, and what the other
 * axles ask for besides. The total is a sum, of which the stage is in one part: at so many times its ratio that part is so many
 * times as much.
 */
function parted(
  evaluation: Evaluation,
  id: string,
  own: Quantity,
): ReadonlyMap<string, { readonly rest: Bounded; readonly beside: Bounded }> | undefined {
  const { build, mode, outputs } = evaluation;
  if (!outputs.some(({ isOpen }) => isOpen)) return undefined;
  const stage = oneIn(build)(id)!.stage!;
  const [first, second] = needsOfStage(stage).together?.fields ?? [];
  if (second === undefined) return undefined;
  const counts = stage as unknown as Readonly<Record<string, number>>;
  const changes = { [`${id}.${first}`]: counts[first!], [`${id}.${second}`]: counts[second]! * 2 };
  const { build: twice } = applyChanges(build, changes);
  if (!twice) return undefined;
  const then = evaluate(twice, mode);
  const ownThen = then.outputs.map((output) => ownOf(output, [id])).find((one) => one);
  if (!ownThen?.bounds.isExact || !own.bounds.isExact) return undefined;
  const grown = ownThen.bounds.over(own.bounds).minus(1);
  const parts = outputs.flatMap((output) => {
    const [now, doubled] = [output.bounds, then.output(output.id)?.bounds];
    if (!now?.isExact || !doubled?.isExact) return [];
    const mine = doubled.minus(now).over(grown);
    return mine.low.sign > 0 ? ([[output.id, { rest: mine.over(own.bounds), beside: now.minus(mine) }]] as const) : [];
  });
  return new Map(parts);
}

/** What is wanted of the outputs that some stages drive. */
function outputsFor(
  evaluation: Evaluation,
  ids: readonly string[],
): (WantedOutput & Pick<WantedPairTotal, "beside">)[] | NotAsked {
  const { build, outputs } = evaluation;
  const { target } = build;
  const owns = outputs.map((output) => output.reduction && ownOf(output, ids));
  const first = owns.find((own) => own);
  const parts = ids.map((id) => {
    const own = ids.length === 1 ? first : outputs.map((output) => ownOf(output, [id])).find((one) => one);
    return own && parted(evaluation, id, own);
  });
  const isSum = parts.some((one) => one && [...one.values()].some(({ beside }) => beside.low.sign));
  if (isSum && ids.length > 1) return "open-differential";
  const driven = outputs.flatMap((output, n) => {
    const isWanted = target && (target.output ?? output.id) === output.id;
    const range = isWanted && { from: target.from, to: target.to };
    // What an open differential takes up reaches axles that the stage does not drive.
    const part = isSum ? parts[0]!.get(output.id) : undefined;
    if (part) return { id: output.id, ...part, ...range };
    const own = owns[n];
    return own ? { id: output.id, rest: output.reduction!.over(own).bounds, ...range } : [];
  });
  if (!driven.length) return "not-driven";
  return driven.some((output) => "from" in output) ? driven : "no-range";
}

const common = ({ stock, parts, asking: { order, signal } }: Shop) => ({
  stock,
  currency: currencyOf(parts),
  ...(order && { order }),
  ...(signal && { signal }),
});

/**
 * What a build asks of a search for one of its stages, be it before the split, in a branch, on an axle or behind a motor of
 * its own: which parts could go there, what they must fit, what is wanted of the outputs that it drives, and what there is.
 *
 * @returns the question, or why there is none
 *
 * @example
 * const stages = [{ id: "primary", kind: "pair", driver: 15, driven: 62, module: "0.8" } as const];
 * const parts = [15, 17].map((teeth) => ({ id: `p${teeth}`, is: "pinion", teeth, module: "0.8" }) as const);
 * const spur = { id: "s62", is: "spur", teeth: 62, module: "0.8" } as const;
 * const build = { format: "meshwright-build/1", stages, outputs: [{ id: "rear", stages: [] }], target: { from: 3, to: 4 } } as const;
 * const question = askPairs(evaluate(parseBuild({ ...build, parts: [...parts, spur] })), "primary");
 * [...findPairs(question as PairQuestion)].flatMap(({ found }) => found.map(({ parts: [one] }) => one!.id)); // => ["p17"]
 * askPairs(evaluate(parseBuild(build)), "secondary"); // => "no-stage"
 */
export function askPairs(evaluation: Evaluation, stage: string, asking: Asking = {}): PairQuestion | NotAsked {
  const shop = shopOf(evaluation.build, [stage], asking);
  const choice = choiceOf(shop, stage);
  if (typeof choice === "string") return choice;
  const outputs = outputsFor(evaluation, [stage]);
  if (typeof outputs === "string") return outputs;
  const { id: _, ...rest } = choice;
  return { ...rest, outputs: outputs.filter(({ from }) => from !== undefined), ...common(shop) };
}

/** The rest of the comparison of two outputs: what both share cancels in it. */
function compareRest(evaluation: Evaluation, ids: readonly string[], { compare, wheels = [] }: TrainAsking) {
  const [of, against] = [compare!.of, compare!.with].map((id) => evaluation.output(id)) as [
    OutputEvaluation,
    OutputEvaluation,
  ];
  const rest = (output: OutputEvaluation): Quantity => {
    const own = ownOf(output, ids);
    return own ? output.reduction!.over(own) : output.reduction!;
  };
  const gears = rest(against).over(rest(of));
  const isChosen = ({ id }: OutputEvaluation) => wheels.includes(id);
  // Where a wheel is not known, gears alone are compared.
  if (![of, against].every((output) => isChosen(output) || output.output.wheel))
    return { rest: gears.bounds, tyres: false };
  const rolled = (output: OutputEvaluation) => (isChosen(output) ? pi() : rolledBy(output.output.wheel!));
  return { rest: gears.times(rolled(of)).over(rolled(against)).bounds, tyres: true };
}

/**
 * What a build asks of a search for several of its stages at once, and for wheels: as `askPairs`, for all of them together.
 *
 * @returns the question, or why there is none
 */
export function askTrains(
  evaluation: Evaluation,
  stages: readonly string[],
  asking: TrainAsking = {},
): TrainQuestion | NotAsked {
  const { wheels = [], compare } = asking;
  const shop = shopOf(evaluation.build, [...stages, ...wheels], asking);
  const outputs = outputsFor(evaluation, stages);
  if (typeof outputs === "string") return outputs;
  if (outputs.some(({ beside }) => beside)) return "open-differential";
  const choices: (GearChoice & { readonly id: string })[] = [];
  for (const stage of stages) {
    const choice = choiceOf(shop, stage);
    if (typeof choice === "string") return choice;
    choices.push(choice);
  }
  for (const id of compare ? [compare.of, compare.with] : []) {
    const output = evaluation.output(id);
    if (!output?.reduction) return "not-driven";
    // An output that none of the stages drives is compared as it is.
    if (!outputs.some((one) => one.id === id)) outputs.push({ id, rest: output.reduction.bounds });
  }
  const tyres = shop.parts.filter(({ is, diameter }) => is === "wheel" && diameter !== undefined);
  const drives = (id: string) =>
    evaluation.outputs.filter(({ steps }) => steps.some((step) => step.stage.id === id)).map((output) => output.id);
  return {
    stages: choices.map((choice) => ({
      ...choice,
      on: drives(choice.id).filter((id) => outputs.some((one) => one.id === id)),
    })),
    outputs: outputs.map((output) => {
      if (!wheels.includes(output.id)) return output;
      const { wheels: pieces = 2 } = evaluation.output(output.id)!.output;
      return { ...output, pieces, wheels: tyres.filter((part) => isAmong(shop, part, pieces)) };
    }),
    ...(compare && { compare: { ...compare, ...compareRest(evaluation, stages, asking) } }),
    ...common(shop),
  };
}
