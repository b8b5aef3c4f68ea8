import type { Part } from "../drivetrain/index.js";
import { type Bounded, rational, type Rational } from "../exact/index.js";
import { countedIn, type Fit, type FitMount, fits, type FitQuestion, type Reason } from "../fit/index.js";
import { moduleOf, type Toothed, type ToothPair } from "../gears/index.js";
import { checkForm, type GearOrCount, type GearChoice, gearOf, pitchOf, setOf } from "./question.js";

/** Gears that are alike as far as teeth go. */
export class Sort {
  readonly teeth: number;
  readonly pitch: Toothed;
  /** Neither shifted nor of a tip diameter of their own: the sum of the teeth settles the centre distance. */
  readonly plain: boolean;
  /** One of them. */
  readonly first: Part;
  readonly #parts: Part[];
  #sorted = true;

  constructor(teeth: number, part: Part, plain: boolean) {
    const { module, diametralPitch, pressureAngle } = part;
    this.teeth = teeth;
    this.pitch = { module, diametralPitch, pressureAngle } as Toothed;
    this.plain = plain;
    this.first = part;
    this.#parts = [part];
  }

  add(part: Part): void {
    this.#parts.push(part);
    this.#sorted = false;
  }

  /** By id. */
  get parts(): readonly Part[] {
    if (!this.#sorted) this.#parts.sort(byId);
    this.#sorted = true;
    return this.#parts;
  }
}

/** What is alike of all gears that meet in one place. */
export interface Place {
  /** What the teeth are to fit. */
  readonly mount?: FitMount | undefined;
  /** How they run; the driven one may be a ring. */
  readonly teeth?: Pick<ToothPair, "internal" | "form" | "helixAngle"> | undefined;
  /** Fits that have been found out about others, where there are many that are alike. */
  readonly known?: Known | undefined;
}

/** What is sold together. */
export interface SoldTogether {
  /** Its reduction, and that with one tooth more on the driver, where it is not driven over driver. */
  readonly reduction?: readonly [own: Rational, oneMore: Rational] | undefined;
  /** No pair of gears that mesh. */
  readonly whole?: boolean | undefined;
}

/** Fits that have been looked at, by their questions. */
export type Known = Map<string, Fit>;

/** Two sorts that have one pitch. */
export class Meeting {
  readonly counts: readonly [driver: number, driven: number];
  readonly driver: Sort;
  readonly driven: Sort;
  /** What both are sold as, where they are sold together. */
  readonly set: SoldTogether | undefined;
  readonly #place: Place;
  #fit: Fit | undefined;

  constructor(driver: Sort, driven: Sort, place: Place, set?: SoldTogether) {
    this.counts = [driver.teeth, driven.teeth];
    this.driver = driver;
    this.driven = driven;
    this.set = set;
    this.#place = place;
  }

  /** The reduction, as whole numbers over each other. */
  get ratio(): readonly [top: number | bigint, bottom: number | bigint] {
    const own = this.set?.reduction?.[0];
    return own ? [own.numerator, own.denominator] : [this.counts[1], this.counts[0]];
  }

  /** How many teeth on the driver make a difference of a total: one tooth more makes T / (driver + 1) of a pair's. */
  inTeeth(difference: Rational, total: Rational): Rational {
    const { reduction } = this.set ?? {};
    if (!reduction) return difference.times(this.counts[0] + 1).over(total);
    const [own, oneMore] = reduction;
    return difference.times(own).over(total).over(own.minus(oneMore).abs());
  }

  /** Between the axes, by the parts' own pitch; nothing where no such thing follows from the counts. */
  get centre(): Bounded | undefined {
    return this.set?.whole ? undefined : this.fit.mesh.centreDistance;
  }

  /** Both are neither shifted nor of a tip diameter of their own. */
  get plain(): boolean {
    return this.driver.plain && this.driven.plain;
  }

  /** What the teeth and the mount have to say. */
  get fit(): Fit {
    if (this.#fit) return this.#fit;
    const { mount, teeth, known } = this.#place;
    const [driver, driven] = [this.driver.first, this.driven.first];
    // Of a set nobody knows which of its gears such figures are meant for.
    const own = this.set
      ? {}
      : {
          driverShift: driver.shift,
          drivenShift: driven.shift,
          driverTip: driver.tipDiameter,
          drivenTip: driven.tipDiameter,
        };
    const pair = { driver: this.counts[0], driven: this.counts[1], ...own, ...teeth };
    const question = { pair, mount, driver: this.driver.pitch, driven: this.driven.pitch } as FitQuestion;
    const key = known && JSON.stringify(question);
    this.#fit = (key === undefined ? undefined : known!.get(key)) ?? fits(question);
    if (key !== undefined) known!.set(key, this.#fit);
    return this.#fit;
  }

  /** What there is to be said about the teeth; of what is not asked, nothing. */
  get reasons(): readonly Reason[] {
    if (this.set?.whole) return [];
    const { reasons } = this.fit;
    return this.#place.mount || !this.suits ? reasons : reasons.filter(({ weight }) => weight === "information");
  }

  /** Whether nothing speaks against the two, and nothing is left open. */
  get suits(): boolean {
    // Of bare counts without a mount nothing is asked but their counts.
    if (!this.#place.mount)
      return !!this.set || !!moduleOf(this.driver.pitch) || !(this.driver.first.id || this.driven.first.id);
    return this.fit.verdict === "fits";
  }
}

const byId = (a: Part, b: Part): number => (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);

/** The sorts of one pitch on either side. */
export interface Shelf {
  readonly pitch: Toothed;
  readonly drivers: readonly Sort[];
  readonly drivens: readonly Sort[];
}

const pitchKey = (gear: Toothed): string => `${moduleOf(gear)} ${rational(gear.pressureAngle ?? 20)}`;

/** What is kept for a few values, and made for each once. */
function once<K, V>(map: Map<K, V>, key: K, make: () => V): V {
  let value = map.get(key);
  if (value === undefined) map.set(key, (value = make()));
  return value;
}

type ByForm = Map<string | number, Sort>;

function sortsOf(gears: readonly GearOrCount[], pitch: Toothed, at: string): Map<string, Sort[]> {
  const shelves = new Map<string, ByForm>();
  // By what is written; two ways to write one pitch share a shelf.
  const written = new Map<unknown, Map<unknown, Map<unknown, ByForm>>>();
  for (const one of gears) {
    const part = gearOf(one, pitch, at);
    const { teeth, module, diametralPitch, pressureAngle, shift, tipDiameter } = part;
    const byAngle = once(
      once(written, module, () => new Map<unknown, Map<unknown, ByForm>>()),
      diametralPitch,
      () => new Map<unknown, ByForm>(),
    );
    let shelf = byAngle.get(pressureAngle);
    if (!shelf) {
      checkForm(part, at);
      shelf = once(shelves, pitchKey(part), () => new Map<string | number, Sort>());
      byAngle.set(pressureAngle, shelf);
    }
    const plain = !shift && tipDiameter === undefined;
    const key = plain ? teeth : `${teeth} ${shift} ${tipDiameter}`;
    const alike = shelf.get(key);
    if (!alike) {
      if (!plain) checkForm(part, at);
      shelf.set(key, new Sort(teeth, part, plain));
      // A bare count that comes again is the same one.
    } else if (part.id) alike.add(part);
  }
  return new Map([...shelves].map(([key, shelf]) => [key, [...shelf.values()]]));
}

/** Gears by pitch: only what stands on one shelf can mesh. */
export function shelvesOf({ drivers = [], drivens = [], ...choice }: GearChoice, at = ""): Shelf[] {
  const pitch = pitchOf(choice, `${at}pitch`);
  const [first, second] = [sortsOf(drivers, pitch, `${at}drivers`), sortsOf(drivens, pitch, `${at}drivens`)];
  return [...first].flatMap(([key, sorts]) => {
    const others = second.get(key);
    return others ? { pitch: sorts[0]!.pitch, drivers: sorts, drivens: others } : [];
  });
}

/** A set as two sorts of gears that have met. */
export function meetingOf(part: Part, place: Place, set: SoldTogether, at = ""): Meeting {
  const { driver, driven } = setOf(part, `${at}sets`);
  return new Meeting(new Sort(driver, part, true), new Sort(driven, part, true), place, set);
}

/** The mount as the teeth see it, with the pitch that it is counted in; what holds the gears is looked at elsewhere. */
export function mountOf({ mount, pitch = {}, whole, form = "spur" }: GearChoice): FitMount | undefined {
  // What has no distance between its axes is held against none.
  if (!mount || whole || (form !== "spur" && form !== "helical")) return undefined;
  const { steps: _, hubHoles: _holes, reach: _reach, line: _line, ...rest } = mount;
  return countedIn(rest, pitch);
}
