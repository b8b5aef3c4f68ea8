import type { Build, Part } from "../../src/drivetrain/index.js";
import { abs, compare, greatest, minus, over, plus, type Ratio, ratio, read, text, times } from "./fractions.js";
import type { ShelfCase } from "./shelf-cases.js";

// What can be made of a shelf, by looking at every pair, with nothing of the search in it.

/** What a part costs where it is needed. */
export interface Line {
  readonly part: Part;
  readonly short: number;
  readonly packs: number;
}

export class Shop {
  readonly currency: string;
  readonly #other: { readonly driver: number; readonly pitch: Ratio | undefined };

  constructor({ parts = [], stages }: Build) {
    const names = parts.flatMap(({ price }) => price?.currency ?? []);
    const often = (name: string) => names.filter((one) => one === name).length;
    this.currency = [...new Set(names)].sort().sort((a, b) => often(b) - often(a))[0] ?? "";
    const other = stages.find(({ id }) => id === "other") as unknown as Part & { driver: number };
    this.#other = { driver: other.driver, pitch: moduleOf(other) };
  }

  /** Pieces that the other stage does not hold. */
  free({ owned, status, stage, teeth, ...part }: Part): number {
    const said = owned ?? (status ? 1 : 0);
    const pitch = moduleOf(part as Part);
    const isThere =
      stage === "other" &&
      teeth === this.#other.driver &&
      (!pitch || !this.#other.pitch || !compare(pitch, this.#other.pitch));
    return Math.max(0, said - (isThere ? 1 : 0));
  }

  line(part: Part, pieces: number): Line {
    const short = Math.max(0, pieces - this.free(part));
    return { part, short, packs: Math.ceil(short / (part.pack ?? 1)) };
  }

  /** Whether it can be had for certain, or nobody has said. */
  had({ part, short }: Line): boolean {
    const owned = part.owned ?? (part.status ? 1 : 0);
    return !short || (part.available ?? (!!part.price || !owned));
  }

  cost(lines: readonly Line[]): { fresh: number; unpriced: number; amount: Ratio } {
    const buy = lines.filter(({ packs }) => packs);
    const priced = buy.filter(({ part }) => part.price?.currency === this.currency);
    return {
      fresh: buy.length,
      unpriced: buy.length - priced.length,
      amount: priced.reduce(
        (sum, { part, packs }) => plus(sum, times(read(part.price!.amount), ratio(packs))),
        ratio(0),
      ),
    };
  }

  /** What is to pay, by currency. */
  sums(lines: readonly Line[]): string[] {
    const sums = new Map<string, Ratio>();
    for (const { part, packs } of lines)
      if (packs && part.price)
        sums.set(
          part.price.currency,
          plus(sums.get(part.price.currency) ?? ratio(0), times(read(part.price.amount), ratio(packs))),
        );
    return [...sums].map(([currency, amount]) => `${currency} ${text(amount)}`).sort();
  }

  cheapest(parts: readonly Part[], pieces: number): Part | undefined {
    return [...parts].sort((a, b) => {
      const [x, y] = [a, b].map((part) => this.cost([this.line(part, pieces)])) as [
        ReturnType<Shop["cost"]>,
        ReturnType<Shop["cost"]>,
      ];
      return x.unpriced - y.unpriced || compare(x.amount, y.amount) || (a.id < b.id ? -1 : 1);
    })[0];
  }
}

const moduleOf = ({ module, diametralPitch }: Part): Ratio | undefined =>
  module !== undefined
    ? read(module)
    : diametralPitch !== undefined
      ? over(ratio(254, 10), read(diametralPitch))
      : undefined;

const sameSize = (a: string, b: string): boolean => compare(abs(minus(read(a), read(b))), ratio(5, 1000)) <= 0;
type Circles = NonNullable<Part["circles"]>;
const match = (some: Circles, others: Circles): boolean =>
  some.some((one) =>
    others.some(
      (other) =>
        (one.count % other.count === 0 || other.count % one.count === 0) &&
        !compare(read(one.diameter!), read(other.diameter!)),
    ),
  );

export interface Looked {
  readonly driver: Part;
  readonly driven: Part;
  readonly set?: boolean;
  readonly counts: readonly [number, number];
  readonly sleeve?: Part;
  readonly drivenSleeve?: Part;
  readonly plate?: Part;
  readonly centre?: Ratio;
  readonly lines: readonly Line[];
  readonly totals: readonly (readonly [Ratio, Ratio])[];
  readonly distance: Ratio;
  /** What would have to change; nothing where all is well. */
  readonly off: Ratio;
  readonly hit: boolean;
  /** Whether it meshes and is held, wherever it brings the totals. */
  readonly fits: boolean;
}

/** Every pair of one pitch, looked at by itself. */
export function everyPair({ build, stage, pieces, rests }: ShelfCase): Looked[] {
  const shop = new Shop(build);
  const { parts = [], target } = build;
  const mount = build.mounts?.find((one) => one.stage === stage);
  const [from, to] = [read(target!.from), read(target!.to)];
  const middle = over(plus(from, to), ratio(2));
  const zero = ratio(0);
  const canHave = (part: Part) => shop.had(shop.line(part, pieces));
  // What is meant for another place counts only where its pitch is known.
  const here = parts.filter((part) => canHave(part) && (part.stage === undefined || moduleOf(part)));
  const of = (...kinds: Part["is"][]) => here.filter(({ is }) => kinds.includes(is));
  const list: Looked[] = [];
  const look = (driver: Part, driven: Part, counts: readonly [number, number], set: boolean) => {
    const module = moduleOf(driver);
    const shafts = [mount?.shaft, ...(mount?.steps ?? [])].filter((one) => one !== undefined);
    const sits = ({ bore }: Part, on: readonly string[]): boolean =>
      !bore || !on.length || on.some((shaft) => sameSize(shaft, bore));
    const sleeveFor = ({ bore }: Part, on: readonly string[]): Part | undefined =>
      shop.cheapest(
        of("sleeve").filter(
          ({ bore: inside, outside }) => sameSize(outside!, bore!) && on.some((shaft) => sameSize(shaft, inside!)),
        ),
        pieces,
      );
    const fits = sits(driver, shafts);
    const sleeve = fits ? undefined : sleeveFor(driver, shafts);
    const { circles } = driven;
    // What is screwed to a hub sits on that; of a set nobody knows more than its driver's bore.
    const bare = !set && !circles && !mount?.hubHoles && mount?.drivenShaft !== undefined;
    const its = bare ? [mount!.drivenShaft!] : [];
    const turns = sits(driven, its);
    const drivenSleeve = turns ? undefined : sleeveFor(driven, its);
    const screws = !circles || !mount?.hubHoles || match(circles, mount.hubHoles);
    const plates = of("plate").filter(({ circles: both }) =>
      both!.some(
        (one, n) =>
          match(circles ?? [], [one]) && both!.some((two, m) => m !== n && match(mount?.hubHoles ?? [], [two])),
      ),
    );
    const plate = screws ? undefined : shop.cheapest(plates, pieces);
    const centre = module && over(times(module, ratio(counts[0] + counts[1])), ratio(2));
    const [least, most] = [read(mount?.opening ?? "0 mm"), read(mount?.openingTo ?? mount?.opening ?? "0 mm")];
    const slot =
      mount && centre
        ? greatest([zero, minus(read(mount.from!), plus(centre, most)), minus(plus(centre, least), read(mount.to!))])
        : zero;
    const own = ratio(counts[1], counts[0]);
    const totals = rests.map(([low, high]) => [times(low, own), times(high, own)] as const);
    const range = totals.flat().map((total) => {
      const off = greatest([zero, minus(from, total), minus(total, to)]);
      // One tooth more on the driver: total × driver / (driver + 1), so total / (driver + 1) less.
      return over(off, over(total, ratio(counts[0] + 1)));
    });
    const twice = !set && driver === driven;
    const gears = set
      ? [shop.line(driver, pieces)]
      : twice
        ? [shop.line(driver, 2 * pieces)]
        : [driver, driven].map((part) => shop.line(part, pieces));
    const sleeves =
      sleeve && sleeve === drivenSleeve
        ? [shop.line(sleeve, 2 * pieces)]
        : [sleeve, drivenSleeve].flatMap((part) => (part ? [shop.line(part, pieces)] : []));
    const lines = [...gears, ...sleeves, ...(plate ? [shop.line(plate, pieces)] : [])];
    const terms = (fits ? 0 : sleeve ? 1 : 4) + (turns ? 0 : drivenSleeve ? 1 : 4) + (screws ? 0 : plate ? 1 : 4);
    const teeth = plus(module ? over(slot, over(module, ratio(2))) : zero, greatest([zero, ...range]));
    // Whether two gears of which nobody knows the pitch mesh, or a set of unknown pitch fits a mount, cannot be told.
    const known = module ?? (set && !mount);
    const suits = !!known && !slot.n && (fits || !!sleeve) && (turns || !!drivenSleeve) && (screws || !!plate);
    const hit = suits && !teeth.n;
    // One piece cannot be in both places.
    if (twice && !shop.had(gears[0]!)) return;
    if (sleeve && sleeve === drivenSleeve && !shop.had(sleeves[0]!)) return;
    list.push({
      driver,
      driven,
      set,
      counts,
      ...(sleeve && { sleeve }),
      ...(drivenSleeve && { drivenSleeve }),
      ...(plate && { plate }),
      ...(centre && { centre }),
      lines,
      totals,
      distance: greatest([zero, ...totals.flat().map((total) => abs(minus(total, middle)))]),
      off: plus(teeth, ratio(terms)),
      hit,
      fits: suits,
    });
  };
  const angle = ({ pressureAngle = 20 }: Part) => read(pressureAngle);
  const place = [...build.stages, ...build.outputs.flatMap((output) => output.stages)].find(({ id }) => id === stage);
  // What is sold together, and not otherwise, is no two gears.
  const together = (place as { readonly set?: boolean }).set === true;
  for (const driver of together ? [] : of("pinion", "gear"))
    for (const driven of of("spur", "gear")) {
      const [a, b] = [moduleOf(driver), moduleOf(driven)];
      if (!a !== !b || (a && b && compare(a, b)) || compare(angle(driver), angle(driven))) continue;
      look(driver, driven, [driver.teeth!, driven.teeth!], false);
    }
  // Beside loose gears a stage that says its pitch takes only sets that say theirs.
  for (const set of of("set")) if (together || moduleOf(set)) look(set, set, [set.driver!, set.driven!], true);
  return list;
}

export const byText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
export const nearest = (a: Looked, b: Looked): number =>
  compare(a.distance, b.distance) ||
  a.counts[0] - b.counts[0] ||
  a.counts[1] - b.counts[1] ||
  byText(a.driver.id, b.driver.id) ||
  byText(a.driven.id, b.driven.id);

/** The parts of a pick, found by either. */
type Picked = Pick<Looked, "driver" | "driven"> & {
  readonly [K in "sleeve" | "drivenSleeve" | "plate"]?: Part | undefined;
};

/** The parts of a pick by their names, those that it does without as well. */
export const idsOf = ({ driver, driven, sleeve, drivenSleeve, plate }: Picked): (string | undefined)[] =>
  [driver, driven, sleeve, drivenSleeve, plate].map((part) => part?.id);

/** As a line of text: what is found, and what is to pay. */
export const shown = (shop: Shop, one: Looked): string =>
  [
    ...idsOf(one).map((id) => id ?? "-"),
    one.centre ? text(one.centre) : "-",
    ...one.totals.map(([low, high]) => `${text(low)}..${text(high)}`),
    text(one.distance),
    ...shop.sums(one.lines),
  ].join(" ");

export const byCost = (shop: Shop) => (a: Looked, b: Looked) => {
  const [x, y] = [shop.cost(a.lines), shop.cost(b.lines)];
  return x.unpriced - y.unpriced || compare(x.amount, y.amount);
};
export const byFresh = (shop: Shop) => (a: Looked, b: Looked) => shop.cost(a.lines).fresh - shop.cost(b.lines).fresh;
