import type { Part } from "../drivetrain/index.js";
import { type Bill, billOf, buyLine, type BuyLine, type OrderLine, packsFor } from "./cost.js";
import { ownedOf } from "./part.js";
import type { Need } from "./places.js";

/** What a change means to get. */
export interface OrderList extends Bill {
  /** New in the build, but owned or ordered already. */
  readonly owned: readonly OrderLine[];
  readonly stays: readonly OrderLine[];
  /** Taken off, or more in the packs than is needed. */
  readonly left: readonly OrderLine[];
  /** What the build asks for after the change, more than before, and no part answers: to be had as well, whatever it is. */
  readonly missing: readonly Need[];
}

/** The pieces of one part, before and after. */
interface Pieces {
  /** As before, at the same place: said to be there, or not said. */
  named: number;
  same: number;
  /** Taken off a place: said to be there, or not said. */
  off: number;
  loose: number;
  /** Asked for by a place that did not have it: by name, or not. */
  wanted: number;
  guessed: number;
  /** How many the place takes that the part is fitted to. */
  fitted: number;
}

const keyOf = ({ part, pieces: _, ...rest }: Need): string => JSON.stringify({ ...rest, part: part?.id });

/** What both lists have, and what only one of them has; pieces that are alike are counted off against each other. */
function compare(before: readonly Need[], after: readonly Need[]): [both: Need[], gone: Need[], fresh: Need[]] {
  const left = new Map<string, number>();
  const both: Need[] = [];
  const rest = (needs: readonly Need[], meet: boolean): Need[] =>
    needs.flatMap((need) => {
      const key = keyOf(need);
      const there = Math.min(need.pieces, left.get(key) ?? 0);
      left.set(key, (left.get(key) ?? 0) - there);
      if (meet && there) both.push({ ...need, pieces: there });
      return there < need.pieces ? [{ ...need, pieces: need.pieces - there }] : [];
    });
  for (const need of before) left.set(keyOf(need), (left.get(keyOf(need)) ?? 0) + need.pieces);
  const fresh = rest(after, true);
  left.clear();
  for (const need of both) left.set(keyOf(need), (left.get(keyOf(need)) ?? 0) + need.pieces);
  return [both, rest(before, false), fresh];
}

/** What a part's pieces come to: how many are moved from where they were, how many are owned, how many have to be bought. */
function comeTo(
  part: Part,
  pieces: Pieces,
): { readonly moved: number; readonly owned: number; readonly short: number } {
  const { named, same, off, loose, wanted, guessed, fitted } = pieces;
  // What is only guessed to be somewhere is not known to be this very piece; what is called fitted is.
  const elsewhere = named + (part.status === "fitted" ? same : 0);
  const there = Math.max(ownedOf(part, { fitted, elsewhere }), off);
  const short = Math.max(0, wanted + Math.max(0, guessed - loose) - there);
  const used = wanted + guessed - short;
  const moved = Math.min(used, off + loose);
  return { moved, owned: used - moved, short };
}

/** What a place asks for that no part says of itself: how a motor or a pack is rated, how a tyre stands that nothing else is known of. */
const unsaidBy = ({ rated, diameter, loadedDiameter, travel }: Need): string =>
  JSON.stringify([rated, diameter === undefined && [loadedDiameter, travel]]);

/** What is new, without the part that stood there when the place asked for something else: then it is another one that is wanted. */
const withoutFormer = (fresh: readonly Need[], gone: readonly Need[]): Need[] =>
  fresh.map((need) => {
    const { part, named: _, ...asked } = need;
    const former = part && gone.find((one) => one.part === part && one.stage === need.stage);
    return former && unsaidBy(former) !== unsaidBy(need) ? asked : need;
  });

/** The pieces of every part, those that are asked for first. */
function piecesOf(before: readonly Need[], after: readonly Need[]): { all: Map<Part, Pieces>; missing: Need[] } {
  const [both, gone, asked] = compare(before, after);
  const fresh = withoutFormer(asked, gone);
  const all = new Map<Part, Pieces>();
  const of = (part: Part): Pieces => {
    let one = all.get(part);
    if (!one) all.set(part, (one = { named: 0, same: 0, off: 0, loose: 0, wanted: 0, guessed: 0, fitted: 0 }));
    return one;
  };
  for (const { part } of after) if (part) of(part);
  const add = (needs: readonly Need[], said: keyof Pieces, unsaid: keyof Pieces) => {
    for (const { part, pieces, named } of needs) if (part) of(part)[named ? said : unsaid] += pieces;
  };
  add(both, "named", "same");
  add(gone, "off", "loose");
  add(fresh, "wanted", "guessed");
  for (const needs of [after, before]) {
    const fitted = new Map<Part, number>();
    for (const { part, pieces, stage } of needs)
      if (part && (part.stage ?? stage) === stage) fitted.set(part, (fitted.get(part) ?? 0) + pieces);
    for (const [part, count] of fitted) of(part).fitted = Math.max(1, count);
  }
  for (const one of all.values()) one.fitted ||= 1;
  return { all, missing: fresh.filter(({ part }) => !part) };
}

/**
 * What it takes to go from one state of a build to another: to buy in whole packs, owned already, stays, left over. What
 * both states ask for, at the same place and of the same part, stays; what was taken off one place can go to another. Where
 * a price is missing nothing is invented.
 *
 * @param before nothing, where all is to be had
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
  const { all, missing } = piecesOf(before, after);
  const buy: BuyLine[] = [];
  const owned: OrderLine[] = [];
  const stays: OrderLine[] = [];
  const left: OrderLine[] = [];
  for (const [part, pieces] of all) {
    const { moved, owned: used, short } = comeTo(part, pieces);
    const put = (lines: OrderLine[], count: number) => count > 0 && lines.push({ part, pieces: count });
    put(stays, pieces.named + pieces.same + moved);
    put(owned, used);
    const packs = packsFor(part, short);
    if (packs) buy.push(buyLine(part, short, packs));
    put(left, pieces.off + pieces.loose - moved + packs * (part.pack ?? 1) - short);
  }
  return { ...billOf(buy), owned, stays, left, missing };
}

/** What there is of parts for places that are chosen anew, all else of a build staying as it is. */
export interface Stock {
  /** What has to be bought of a part for so many pieces there, beyond what the rest of the build makes one buy anyway. */
  lineFor(part: Part, pieces: number): BuyLine;
}

/** Nothing but what the parts themselves say. */
export const emptyStock: Stock = {
  lineFor: (part, pieces) => buyLine(part, Math.max(0, pieces - ownedOf(part))),
};

/**
 * What there is for the parts of some places: owned pieces less those that other places hold, what the places held before,
 * and what is left in packs that other places make one buy. `orderOf` comes to the same sums once such parts are in place.
 *
 * @param before the state that an order is counted from
 * @param after the state that it is counted to
 * @param places those that are chosen anew
 *
 * @example
 * const price = { amount: "4.20", currency: "EUR" };
 * const p15 = { id: "p15", is: "pinion", teeth: 15, owned: 1, price } as const;
 * const other = [{ stage: "other", is: ["pinion"], pieces: 1, part: p15, named: true }] as const;
 * stockFor(other, other, ["primary"]).lineFor(p15, 1).cost!.amount.toFraction(); // => "21/5"
 * stockFor([], [], ["primary"]).lineFor(p15, 1).packs; // => 0
 */
export function stockFor(before: readonly Need[], after: readonly Need[], places: readonly string[]): Stock {
  const { all } = piecesOf(
    before,
    after.filter(({ stage }) => !places.includes(stage)),
  );
  const none: Pieces = { named: 0, same: 0, off: 0, loose: 0, wanted: 0, guessed: 0, fitted: 1 };
  return {
    lineFor(part, pieces) {
      const now = all.get(part) ?? none;
      const without = comeTo(part, now).short;
      const short = comeTo(part, { ...now, wanted: now.wanted + pieces }).short;
      return buyLine(part, short - without, packsFor(part, short) - packsFor(part, without));
    },
  };
}
