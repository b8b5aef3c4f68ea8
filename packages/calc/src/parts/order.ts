import { branchesOf, stagesOf, type Build, type Output, type Part, type PartKind } from "../build/index.js";
import { lengthOf, rational, type Rational } from "../exact/index.js";
import { comparePitch } from "../mesh/index.js";
import type { Toothed } from "../kinds/index.js";

/** What one place in a build asks for. */
export interface Need {
  /** The stage, or the output whose wheels are meant. */
  readonly stage: string;
  readonly is: readonly PartKind[];
  readonly pieces: number;
  readonly teeth?: number | undefined;
  readonly driver?: number | undefined;
  readonly driven?: number | undefined;
  readonly value?: string | undefined;
  readonly diameter?: string | undefined;
  readonly pitch?: Toothed;
  /** The part that answers it best; none where no part does. */
  readonly part?: Part;
}

const single: readonly PartKind[] = ["pinion", "spur", "gear"];
const together: readonly PartKind[] = ["set", "hub", "gearbox"];
const wheelsOf = ({ wheels = 2 }: Output): number => wheels;

const sameText = (a: string | undefined, b: string | undefined, read: (text: string) => Rational): boolean =>
  a === b || (a !== undefined && b !== undefined && read(a).equals(read(b)));

/** Whether a part is what is asked for, as far as both say. */
function answers(part: Part, need: Need): boolean {
  const { is, teeth, driver, driven, value, diameter, pitch = {} } = need;
  return (
    is.includes(part.is) &&
    (teeth === undefined || teeth === part.teeth) &&
    (driver === undefined || (driver === part.driver && driven === part.driven)) &&
    (value === undefined || value === part.value) &&
    (diameter === undefined || sameText(diameter, part.diameter, lengthOf)) &&
    (comparePitch(part, pitch)?.pitch ?? "same") === "same"
  );
}

/** The lower, the sooner it is taken: meant for this place, owned, on sale, not known, meant for another place, not on sale. */
const rank = ({ stage, owned, available }: Part, place: string): number =>
  stage === place ? 0 : stage !== undefined ? 4 : owned ? 1 : available ? 2 : available === undefined ? 3 : 5;

/**
 * What every place of a build asks for, with the part among those given that answers it best. A stage takes one for the
 * vehicle, or one for each axle or wheel that it drives; a pair is a set where it is sold as one, else two gears.
 */
export function needsOf(build: Build, parts: readonly Part[]): Need[] {
  const needs: Need[] = [];
  const add = (need: Need): boolean => {
    const [part] = parts
      .filter((one) => answers(one, need))
      .sort((a, b) => rank(a, need.stage) - rank(b, need.stage) || (a.id < b.id ? -1 : 1));
    needs.push(part ? { ...need, part } : need);
    return !!part;
  };
  for (const { stage, pointer } of stagesOf(build)) {
    const [, list, n] = pointer.split("/");
    const driven = build.outputs.filter((output, m) =>
      list === "outputs"
        ? m === Number(n)
        : list === "branches"
          ? branchesOf(build, output).includes(build.branches![Number(n)]!)
          : !output.motor,
    );
    const { per } = stage;
    const pieces =
      per === "wheel" ? driven.reduce((sum, output) => sum + wheelsOf(output), 0) : per === "axle" ? driven.length : 1;
    const common = { stage: stage.id, pieces };
    const each = (is: readonly PartKind[], counts: readonly number[], pitch: Toothed = {}) =>
      counts.forEach((teeth) => add({ ...common, is, teeth, pitch }));
    if (stage.kind === "pair") {
      const whole: Need = { ...common, is: together, driver: stage.driver, driven: stage.driven };
      if (stage.set || parts.some((part) => answers(part, whole))) add(whole);
      else {
        each(["pinion", "gear"], [stage.driver], stage);
        each(["spur", "gear"], [stage.driven], stage);
      }
    } else if (stage.kind === "train") each(single, stage.teeth, stage);
    else if (stage.kind === "belt") each(["pulley"], [stage.driver, stage.driven]);
    else if (stage.kind === "published") add({ ...common, is: ["gearbox"], value: stage.value });
  }
  for (const output of build.outputs) {
    const diameter = output.wheel?.diameter;
    if (diameter) add({ stage: output.id, is: ["wheel"], pieces: wheelsOf(output), diameter });
  }
  return needs;
}

/** A part and how many pieces of it. */
export interface OrderLine {
  readonly part: Part;
  readonly pieces: number;
}

export interface BuyLine extends OrderLine {
  /** Whole packs. */
  readonly packs: number;
  /** What the packs cost; undefined where the part has no price. */
  readonly cost?: { readonly amount: Rational; readonly currency: string };
}

/** What a change means to get. */
export interface OrderList {
  readonly buy: readonly BuyLine[];
  /** New in the build, but owned or ordered already. */
  readonly owned: readonly OrderLine[];
  readonly stays: readonly OrderLine[];
  /** Taken off, or more in the packs than is needed. */
  readonly left: readonly OrderLine[];
  /** Of all that has a price, exactly, by currency. */
  readonly sums: readonly { readonly currency: string; readonly amount: Rational }[];
  /** How many lines to buy have no price. */
  readonly unpriced: number;
  /** What the build asks for after the change and no part answers. */
  readonly missing: readonly Need[];
}

const total = (needs: readonly Need[]): Map<Part, number> => {
  const pieces = new Map<Part, number>();
  for (const need of needs) if (need.part) pieces.set(need.part, (pieces.get(need.part) ?? 0) + need.pieces);
  return pieces;
};

/** What is owned of a part: as said, else what is fitted, and one where it is called owned, ordered or spare. */
const ownedOf = ({ owned, status }: Part, fitted: number): number =>
  owned ?? fitted + (status && status !== "fitted" ? 1 : 0);

/**
 * What it takes to go from one state of a build to another: to buy in whole packs, owned already, stays, left over. Where a
 * price is missing nothing is invented.
 *
 * @example
 * const price = { amount: "4.20", currency: "EUR" };
 * const [old, fresh] = [{ id: "p23", is: "pinion", teeth: 23 }, { id: "p15", is: "pinion", teeth: 15, pack: 2, price }] as const;
 * const before = [{ stage: "primary", is: ["pinion"], pieces: 1, part: old }] as const;
 * const { buy, left, sums } = orderOf(before, [{ ...before[0], pieces: 3, part: fresh }]);
 * buy.map(({ part, pieces, packs }) => [part.id, pieces, packs]); // => [["p15", 3, 2]]
 * left.map(({ part, pieces }) => [part.id, pieces]); // => [["p15", 1], ["p23", 1]]
 * sums.map(({ currency, amount }) => [currency, amount.toFraction()]); // => [["EUR", "42/5"]]
 */
export function orderOf(before: readonly Need[], after: readonly Need[]): OrderList {
  const old = total(before);
  const wanted = total(after);
  const buy: BuyLine[] = [];
  const [owned, stays, left]: OrderLine[][] = [[], [], []] as never;
  const sums = new Map<string, Rational>();
  for (const part of new Set([...wanted.keys(), ...old.keys()])) {
    const fitted = old.get(part) ?? 0;
    const need = wanted.get(part) ?? 0;
    const put = (lines: OrderLine[], pieces: number) => pieces > 0 && lines.push({ part, pieces });
    put(stays!, Math.min(fitted, need));
    const more = Math.max(0, need - fitted);
    const spare = Math.min(more, Math.max(0, ownedOf(part, fitted) - fitted));
    put(owned!, spare);
    const pieces = more - spare;
    const { pack = 1, price } = part;
    const packs = Math.ceil(pieces / pack);
    put(left!, Math.max(0, fitted - need) + packs * pack - pieces);
    if (!packs) continue;
    const cost = price && { amount: rational(price.amount).times(packs), currency: price.currency };
    buy.push({ part, pieces, packs, ...(cost && { cost }) });
    if (cost) sums.set(cost.currency, cost.amount.plus(sums.get(cost.currency) ?? 0));
  }
  return {
    buy,
    owned: owned!,
    stays: stays!,
    left: left!,
    sums: [...sums].map(([currency, amount]) => ({ currency, amount })),
    unpriced: buy.filter(({ cost }) => !cost).length,
    missing: after.filter(({ part }) => !part),
  };
}
