import type { Build, Part } from "../drivetrain/index.js";
import { lengthOf, rational, ratioOf } from "../exact/index.js";
import type { ReasonCode } from "../fit/index.js";
import { comparePitch, moduleOf, pressureAngleOf, type Toothed } from "../gears/index.js";
import { plainRatio, printedInterval, type PartKind } from "../stages/index.js";
import { asDriven, asDriver, type Carried } from "./adapters.js";
import { buyLine, cheapestFirst, costOfLine } from "./cost.js";
import { canBeHad, currencyOf, ownedOf } from "./part.js";
import { type Need, piecesPer, type Place, placesOf } from "./places.js";
import { isOfForm, type Spec } from "./stage-needs.js";

/** A printed ratio is another one with more digits, and the same with `:1` behind it. */
const printed = (ratio: string): string => {
  const { low, high } = printedInterval(plainRatio(ratio));
  return `${low.toFraction()} ${high.toFraction()}`;
};

/** Whether a part says of its one ratio or length what is asked for. */
export const isSameRatio = (a: string | undefined, b: string): boolean =>
  a === b || (a !== undefined && printed(a) === printed(b));
export const isSameLength = (a: string | undefined, b: string): boolean =>
  a === b || (a !== undefined && lengthOf(a).equals(lengthOf(b)));

/** Whether a part's count is the one asked for. Where it is not known which belt, only one that is meant for the place will do. */
const countAnswers = (part: Part, { is, teeth, either }: Spec, isHere: boolean): boolean =>
  teeth !== undefined ? teeth === part.teeth : either ? either.includes(part.teeth!) : !is.includes("belt") || isHere;

/** Whether two say no different angles; one that only one of them says does not speak against the other. */
export const isSameAngle = (one: Toothed, other: Toothed): boolean =>
  one.pressureAngle === undefined ||
  other.pressureAngle === undefined ||
  pressureAngleOf(one).equals(pressureAngleOf(other));

/** Whether two pitches are one, as far as both are known. A part that is said to be here is told from others by what both say. */
function samePitch(part: Toothed, pitch: Toothed, isHere: boolean): "same" | "near" | "different" | undefined {
  if (!isSameAngle(part, pitch)) return "different";
  const compared = comparePitch(part, pitch);
  if (!compared || !isHere) return compared?.pitch;
  return compared.coarser.sign ? "different" : "same";
}

/** Whether two parts of one place can run together, as far as both say their pitch. */
const runsWith = (one: Part, other: Part): boolean =>
  (samePitch(one as Toothed, other as Toothed, false) ?? "same") === "same" &&
  (one.pitch === undefined || other.pitch === undefined || isSameLength(one.pitch, other.pitch));

/** What tells pitches apart: of one pitch, one gear runs with what another runs with. */
const pitchKey = (part: Part): string =>
  `${moduleOf(part as Toothed)?.toFraction()} ${part.pressureAngle} ${part.pitch}`;

/** As many pitches are tried in a place whose own is not known. */
const mostTried = 20;

/** So much of a module further out, a tip is that of another shift. */
const tipSlack = ratioOf(1, 5);

/** Whether a gear off the shelf is shifted and turned as its place says: what says nothing of it is plain. */
function isMarkedSo(part: Part, { teeth, pitch = {}, form, shift = 0, tipDiameter }: Need): boolean {
  if (teeth === undefined) return true;
  const own = rational(part.shift ?? 0);
  const isTip =
    part.tipDiameter !== undefined && tipDiameter !== undefined && isSameLength(part.tipDiameter, tipDiameter);
  if (!own.equals(rational(shift)) && !(part.shift === undefined && isTip)) return false;
  const module = moduleOf(pitch) ?? moduleOf(part as Toothed);
  // Tips of other teeth stand elsewhere.
  if (part.tipDiameter === undefined || isTip || !module || (part.form ?? form) !== "spur") return true;
  const plain = module.times(own.times(2).plus(teeth + 2));
  const tip = tipDiameter === undefined ? plain : lengthOf(tipDiameter);
  return lengthOf(part.tipDiameter).minus(tip).abs().compare(module.times(tipSlack)) <= 0;
}

/** Kinds that nothing but a place or a name tells apart. */
const nameless: readonly PartKind[] = ["motor", "battery", "other"];

/**
 * Whether a part is what is asked for, as far as both say. One that is meant for another place has to be known to be the
 * same: teeth alone do not make a motor's pinion a hub's.
 *
 * @param isFitted the place names it as fitted
 */
export function answers(part: Part, need: Need, isFitted = false): boolean {
  const { is, driver, driven, value, diameter, pitch = {}, beltPitch, label } = need;
  if (!is.includes(part.is)) return false;
  const isHere = isFitted || part.stage === need.stage;
  if (nameless.includes(part.is)) return isHere || (part.stage === undefined && !!label && part.name === label);
  const teeth = samePitch(part as Toothed, pitch, isHere);
  const isKnown = teeth ?? diameter ?? (beltPitch && part.pitch);
  return (
    countAnswers(part, need, isHere) &&
    isOfForm(part, need) &&
    (!beltPitch || !part.pitch || isSameLength(part.pitch, beltPitch)) &&
    (driver === undefined || (driver === part.driver && driven === part.driven)) &&
    (value === undefined || isSameRatio(part.value, value)) &&
    // Under weight a tyre measures something else than it is sold by.
    (part.is !== "wheel" || diameter !== undefined || isHere) &&
    (diameter === undefined || isSameLength(part.diameter, diameter)) &&
    (teeth ?? "same") === "same" &&
    (isHere || isMarkedSo(part, need)) &&
    (isHere || part.stage === undefined || !!isKnown)
  );
}

/** Parts by what is asked of them first: their kind and their counts. */
class Shelf {
  readonly #by = new Map<string, Part[]>();

  constructor(parts: readonly Part[]) {
    for (const part of parts) {
      this.#add(part.is, part);
      this.#add(`id ${part.id}`, part);
      const between = part.is === "sleeve" || part.is === "plate";
      if (part.is === "other" || (between && part.stage !== undefined && part.status === "fitted"))
        this.#add(`for ${part.stage ?? ""}`, part);
      if (part.teeth !== undefined) this.#add(`${part.is} ${part.teeth}`, part);
      if (part.driver !== undefined) this.#add(`${part.is} ${part.driver}:${part.driven}`, part);
    }
  }

  #add(key: string, part: Part): void {
    const list = this.#by.get(key);
    if (list) list.push(part);
    else this.#by.set(key, [part]);
  }

  /** Parts of no special kind that are meant for a place, and whatever it names. */
  for(place: string, fitted: readonly string[]): Part[] {
    const named = fitted.flatMap((id) => this.#by.get(`id ${id}`) ?? []);
    return [...new Set([...(this.#by.get(`for ${place}`) ?? []), ...named])];
  }

  of({ is, teeth, driver, driven }: Spec): Part[] {
    const count = teeth !== undefined ? ` ${teeth}` : driver !== undefined ? ` ${driver}:${driven}` : "";
    return is.flatMap((kind) => this.#by.get(kind + count) ?? []);
  }
}

/** Shelves by the list that they were made of, where nobody can change it: a build with another count has the same parts. */
const shelves = new WeakMap<readonly Part[], Shelf>();

function shelfOf(parts: readonly Part[]): Shelf {
  if (!Object.isFrozen(parts)) return new Shelf(parts);
  let shelf = shelves.get(parts);
  if (!shelf) shelves.set(parts, (shelf = new Shelf(parts)));
  return shelf;
}

/** Whether a place names a part, or the part says that it is fitted there. */
const isFittedTo = (part: Part, place: string, fitted: readonly string[]): boolean =>
  fitted.includes(part.id) || (part.stage === place && part.status === "fitted");

/** What a sleeve or a plate makes up for. */
const bridged: ReadonlySet<ReasonCode> = new Set(["bore-too-large", "hub-holes"]);

/** How a gear is held where it is the n-th of a place: the first is the driver, the second is driven, what is sold together is both. */
function carriedAt(part: Part, { mount, whole }: Place, n: number, adapters: readonly Part[]): Carried[] {
  if (!mount || !whole || n > 1) return [];
  return [
    ...(n === 0 ? [asDriver(part, mount, adapters)] : []),
    ...(n === 1 || part.driver !== undefined ? [asDriven(part, mount, adapters)] : []),
  ];
}

/** Looks for the parts that a build's places ask for. */
class Search {
  readonly currency: string;
  readonly #shelf: Shelf;
  /** How many pieces of each part have found a place. */
  readonly #taken = new Map<Part, number>();

  constructor(parts: readonly Part[]) {
    this.currency = currencyOf(parts);
    this.#shelf = shelfOf(parts);
  }

  /** How many pieces there are beyond those that have found a place. */
  #free(part: Part, pieces: number): number {
    const elsewhere = this.#taken.get(part) ?? 0;
    return ownedOf(part, { fitted: elsewhere + pieces, elsewhere });
  }

  #give(need: Need, part: Part, named: boolean): Need {
    this.#taken.set(part, (this.#taken.get(part) ?? 0) + need.pieces);
    return { ...need, part, ...(named && { named }) };
  }

  /** The first by rank, then by id. */
  #best(parts: readonly Part[], rank: (part: Part) => number): Part | undefined {
    let best: Part | undefined;
    let least = Infinity;
    for (const part of parts) {
      const value = rank(part);
      if (value < least || (best && value === least && part.id < best.id)) [best, least] = [part, value];
    }
    return best;
  }

  /** The part that a place names: as fitted, or as meant for it; of those, the likeliest. */
  named(need: Need, { fitted, id }: Place): Part | undefined {
    const rank = (part: Part): number => {
      const isFitted = fitted.includes(part.id);
      if ((!isFitted && part.stage !== id) || !answers(part, need, isFitted)) return Infinity;
      if (isFitted) return 0;
      return part.status === "fitted" ? 1 : ownedOf(part) ? 2 : part.available === false ? 4 : 3;
    };
    return this.#best(this.#shelf.of(need), rank);
  }

  /**
   * Any part that answers and can be held: owned, on sale, not known, meant for another place, lacking what holds it, not to be had.
   *
   * @param others what its place has already: gears that run together are of one pitch, also where the stage does not say which
   */
  any(need: Need, place: Place, n = 0, others: readonly Part[] = [], without?: ReadonlySet<string>): Part | undefined {
    const usable = place.mount ? this.#usable(place) : [];
    const rank = (part: Part): number => {
      if (!answers(part, need) || without?.has(pitchKey(part)) || !others.every((other) => runsWith(part, other)))
        return Infinity;
      const ways = carriedAt(part, place, n, usable);
      const refused = ways.flatMap(({ reasons }) => reasons.filter(({ weight }) => weight === "refusal"));
      if (refused.some(({ code }) => !bridged.has(code))) return Infinity;
      const lacking = need.pieces - this.#free(part, need.pieces);
      const own = lacking <= 0 ? 0 : ([4, 1][Number(canBeHad(part, lacking))] ?? 2);
      const at = part.stage !== undefined && part.stage !== need.stage ? 3 : own;
      return refused.length ? Math.max(at, 3.5) : at + (ways.some(({ by }) => by) ? 0.25 : 0);
    };
    return this.#best(this.#shelf.of(need), rank);
  }

  /** What a place asks for: two gears that are sold together are one part where there is such a part, unless others are named. */
  asked(place: Place): readonly Need[] {
    const { each, whole, only, fitted } = place;
    if (!whole) return each;
    if (only) return [whole];
    const set = this.named(whole, place);
    const loose = each.flatMap((need) => this.named(need, place) ?? []);
    const isFitted = (part: Part) => fitted.includes(part.id);
    if (set && (isFitted(set) || !loose.some(isFitted))) return [whole];
    return !loose.length && this.any(whole, place) ? [whole] : each;
  }

  /** Gives named parts to the needs of all places first, then the rest. */
  answer(places: readonly Place[]): Need[][] {
    const all = places.map((place) =>
      this.asked(place).map((need) => {
        const part = this.named(need, place);
        return part ? this.#give(need, part, true) : need;
      }),
    );
    for (const [m, needs] of all.entries())
      for (const [n, need] of needs.entries()) {
        const part = need.part ? undefined : this.#partFor(needs, n, places[m]!);
        if (part) needs[n] = this.#give(need, part, false);
      }
    return all;
  }

  /**
   * The part for one of a place's needs: of those that run with what the place has, the first of a pitch that leaves none of its needs
   * without; where none of so many pitches does, the first.
   */
  #partFor(needs: readonly Need[], n: number, place: Place): Part | undefined {
    const { pitch, beltPitch } = needs[n]!;
    // Where the stage says its pitch, it is that of all.
    if (needs.length < 2 || (pitch?.module ?? pitch?.diametralPitch ?? beltPitch) !== undefined)
      return this.any(needs[n]!, place, n);
    const given = needs.flatMap(({ part }) => part ?? []);
    const best = this.any(needs[n]!, place, n, given);
    const later = needs.flatMap((one, k) =>
      k > n && !one.part && this.any(one, place, k, given) ? [[one, k] as const] : [],
    );
    const tried = new Set<string>();
    for (let part = best; part && tried.size < mostTried; part = this.any(needs[n]!, place, n, given, tried)) {
      const beside = [...given, part];
      const isEnough = later.every(([one, k]) => this.any(one, place, k, beside));
      if (isEnough && (part === best || canBeHad(part) !== false)) return part;
      tried.add(pitchKey(part));
    }
    return best;
  }

  /** The sleeves and plates that can be used in a place: those that it names, then the cheapest. */
  #usable({ id, fitted, pieces }: Place): readonly Part[] {
    const lacking = (part: Part) => pieces - this.#free(part, pieces);
    const isFitted = (part: Part) => isFittedTo(part, id, fitted);
    const usable = this.#shelf
      .of({ is: ["sleeve", "plate"] })
      .filter((part) => isFitted(part) || canBeHad(part, lacking(part)) !== false);
    const cheapest = cheapestFirst(usable, (part) =>
      costOfLine(buyLine(part, Math.max(0, lacking(part))), this.currency),
    );
    return [...cheapest.filter(isFitted), ...cheapest.filter((part) => !isFitted(part))];
  }

  /** The sleeves and plates that a mount's gears need, each the cheapest that does, unless the place names one. */
  adapters(place: Place, needs: readonly Need[]): Need[] {
    const { id, fitted, pieces, mount } = place;
    const made: Need[] = [];
    if (!mount) return made;
    for (const [n, need] of needs.slice(0, 2).entries()) {
      // What a gear before took is there no longer.
      const ways = need.part ? carriedAt(need.part, place, n, this.#usable(place)) : [];
      for (const { by, shaft, reasons } of ways) {
        const isScrewed = reasons.some(({ code, weight }) => code === "hub-holes" && weight === "refusal");
        if (!by && shaft === undefined && !isScrewed) continue;
        const spec: Spec =
          shaft === undefined ? { is: ["plate"] } : { is: ["sleeve"], bore: shaft, outside: need.part!.bore };
        const wanted = { stage: id, pieces, ...spec };
        made.push(by ? this.#give(wanted, by, isFittedTo(by, id, fitted) || by.stage === id) : wanted);
      }
    }
    return made;
  }

  /** Whether a place names more than its gears. */
  namesMore({ id, fitted }: Place): boolean {
    return id !== "" && this.#shelf.for(id, fitted).length > 0;
  }

  /** What the author listed for a place beyond what it asks for: bearings, screws. */
  listed({ id, fitted, drives, pieces }: Place, needs: readonly Need[]): Need[] {
    const here = this.#shelf.for(id, fitted).filter((part) => {
      if (needs.some((need) => need.part === part)) return false;
      if (fitted.includes(part.id)) return ["other", "sleeve", "plate"].includes(part.is);
      return id !== "" || (!this.#taken.has(part) && !!(part.per ?? part.pieces ?? part.status === "fitted"));
    });
    return here.map((part) => {
      const places = part.per ? piecesPer(part.per, drives) : pieces;
      return this.#give({ stage: id, is: [part.is], pieces: places * (part.pieces ?? 1) }, part, true);
    });
  }
}

/**
 * What every place of a build asks for, with the part among those given that answers it best: gears or sets, the sleeves
 * and plates that they need on a mount, belts, wheels, motors, pack, controller, and whatever the author listed for a place.
 * A stage takes one for the vehicle, or one for each axle or wheel that it drives; a pair, or a worm with its wheel, is a set
 * where it is sold as one, else two parts. What no part answers stays a need.
 *
 * @param parts those of the build where none are given
 */
export function needsOf(build: Build, parts: readonly Part[] = build.parts ?? []): Need[] {
  const places = placesOf(build);
  const search = new Search(parts);
  const needs = search.answer(places);
  const complete = (place: Place, n: number): void => {
    needs[n]!.push(...search.adapters(place, needs[n]!));
    needs[n]!.push(...search.listed(place, needs[n]!));
  };
  // What is named for a place is no longer there for another.
  const names = places.map((place) => search.namesMore(place));
  for (const named of [true, false]) places.forEach((place, n) => names[n] === named && complete(place, n));
  return needs.flat();
}
