import type { Part } from "../../src/drivetrain/index.js";
import { abs, compare, greatest, minus, over, plus, ratio, type Ratio, read, text, times } from "./fractions.js";
import { byText, everyPair, idsOf, type Line, type Looked, Shop } from "./every-pair.js";
import type { TrainCase } from "./shelf-cases.js";

// Every pair of the one stage with every pair of the other and every wheel, looked at one after the other.

export interface LookedTrain {
  readonly picks: readonly Looked[];
  readonly wheels: readonly (Part | undefined)[];
  readonly totals: readonly (readonly [Ratio, Ratio])[];
  readonly ahead: readonly [Ratio, Ratio];
  readonly lines: readonly Line[];
  readonly distance: Ratio;
  readonly at: readonly number[];
}

const pieces = [1, 1] as const;

export function everyTrain({ build, rests, ahead: [least, most], wheels }: TrainCase): LookedTrain[] {
  const shop = new Shop(build);
  const stages = ["primary", "rear-ring"].map((stage) =>
    everyPair({ build, stage, pieces: 1, rests: [] }).filter(({ fits }) => fits),
  ) as [Looked[], Looked[]];
  const { target, outputs } = build;
  const [from, to] = [read(target!.from), read(target!.to)];
  const middle = over(plus(from, to), ratio(2));
  const wanted = target!.output === "rear" ? [true, false] : [true, true];
  const tyres = (build.parts ?? []).filter((part) => part.is === "wheel" && shop.had(shop.line(part, 2)));
  const listOf = (id: "rear" | "front") => (wheels.includes(id) ? tyres : [undefined]);
  const sizes = outputs.map(({ wheel }) => (wheel ? read(wheel.diameter!) : undefined));
  const found: LookedTrain[] = [];
  const one = ratio(1);
  for (const primary of stages[0])
    for (const ring of stages[1]) {
      const [a, b] = [primary, ring].map(({ counts }) => ratio(counts[1], counts[0])) as [Ratio, Ratio];
      const both = [times(a, b), a];
      const totals = rests.map(([low, high], n) => [times(low, both[n]!), times(high, both[n]!)] as const);
      const inside = totals.every(
        (ends, n) => !wanted[n] || ends.every((end) => compare(end, from) >= 0 && compare(end, to) <= 0),
      );
      if (!inside) continue;
      const far = totals.flatMap((ends, n) => (wanted[n] ? ends.map((end) => abs(minus(end, middle))) : []));
      for (const [n, rear] of listOf("rear").entries())
        for (const [m, front] of listOf("front").entries()) {
          const sizeOf = (part: Part | undefined, output: number) => (part ? read(part.diameter!) : sizes[output]);
          const [mine, theirs] = [sizeOf(front, 1), sizeOf(rear, 0)];
          const tyred = mine && theirs ? over(mine, theirs) : one;
          // How much farther the front rolls: rear turns over front turns, times the wheels; the box may be anywhere in its range.
          const rolls = [1, 0].map((end) => minus(times(over(totals[0]![0], totals[1]![end]!), tyred), one)) as [
            Ratio,
            Ratio,
          ];
          if (compare(rolls[0], read(least)) < 0 || compare(rolls[1], read(most)) > 0) continue;
          const needs = new Map<Part, number>();
          const add = (part: Part | undefined, count: number) =>
            part && needs.set(part, (needs.get(part) ?? 0) + count);
          for (const pick of [primary, ring]) {
            add(pick.driver, pieces[0]);
            if (!pick.set) add(pick.driven, pieces[1]);
            add(pick.sleeve, 1);
            add(pick.drivenSleeve, 1);
            add(pick.plate, 1);
          }
          add(rear, 2);
          add(front, 2);
          const lines = [...needs].map(([part, count]) => shop.line(part, count));
          if (!lines.every((line) => shop.had(line))) continue;
          found.push({
            picks: [primary, ring],
            wheels: [rear, front],
            totals,
            ahead: rolls,
            lines,
            distance: greatest(far),
            at: [n, m],
          });
        }
    }
  const pick = (x: Looked, y: Looked) =>
    x.counts[0] - y.counts[0] ||
    x.counts[1] - y.counts[1] ||
    byText(x.driver.id, y.driver.id) ||
    byText(x.driven.id, y.driven.id);
  return found.sort(
    (x, y) =>
      compare(x.distance, y.distance) ||
      pick(x.picks[0]!, y.picks[0]!) ||
      pick(x.picks[1]!, y.picks[1]!) ||
      x.at[0]! - y.at[0]! ||
      x.at[1]! - y.at[1]!,
  );
}

/** As a line of text: what is found, and what is to pay. */
export const shownTrain = (shop: Shop, train: LookedTrain): string =>
  [
    ...train.picks.flatMap(idsOf),
    ...train.wheels.map((wheel) => wheel?.id),
    ...train.totals.map(([low, high]) => `${text(low)}..${text(high)}`),
    train.ahead.map(text).join(".."),
    text(train.distance),
    ...shop.sums(train.lines),
  ].join(" ");
