import type { Part } from "../drivetrain/index.js";
import { rational } from "../exact/index.js";
import { type Fit, type FitMount, fits, type FitQuestion, type Reason } from "../fit/index.js";
import { moduleOf, type Toothed } from "../gears/index.js";
import { type GearOrCount, type GearChoice, gearOf, pitchOf, setOf } from "./question.js";

/** Gears that are alike as far as teeth go. */
export interface Sort {
  readonly teeth: number;
  readonly pitch: Toothed;
  /** Neither shifted nor of a tip diameter of their own: the sum of the teeth settles the centre distance. */
  readonly plain: boolean;
  /** By id. */
  readonly parts: readonly Part[];
}

/** What the teeth are to fit; the driven one may be a ring. */
export type TeethMount = FitMount & { readonly internal?: boolean };

/** Two sorts that have one pitch. */
export class Meeting {
  readonly counts: readonly [driver: number, driven: number];
  readonly driver: Sort;
  readonly driven: Sort;
  readonly set: boolean;
  readonly #mount: TeethMount | undefined;
  #fit: Fit | undefined;

  constructor(driver: Sort, driven: Sort, mount: TeethMount | undefined, set = false) {
    this.counts = [driver.teeth, driven.teeth];
    this.driver = driver;
    this.driven = driven;
    this.set = set;
    this.#mount = mount;
  }

  /** Both are neither shifted nor of a tip diameter of their own. */
  get plain(): boolean {
    return this.driver.plain && this.driven.plain;
  }

  /** What the teeth and the mount have to say. */
  get fit(): Fit {
    if (!this.#fit) {
      const [driver, driven] = [this.driver, this.driven].map(({ parts, pitch }) => ({ part: parts[0]!, pitch })) as [
        { part: Part; pitch: Toothed },
        { part: Part; pitch: Toothed },
      ];
      const pair = {
        driver: this.counts[0],
        driven: this.counts[1],
        driverShift: driver.part.shift,
        drivenShift: driven.part.shift,
        driverTip: driver.part.tipDiameter,
        drivenTip: driven.part.tipDiameter,
        internal: this.#mount?.internal,
      };
      const question = { pair, mount: this.#mount, driver: driver.pitch, driven: driven.pitch };
      this.#fit = fits(question as FitQuestion);
    }
    return this.#fit;
  }

  /** What there is to be said about the teeth; of what is not asked, nothing. */
  get reasons(): readonly Reason[] {
    const { reasons } = this.fit;
    return this.#mount || !this.suits ? reasons : reasons.filter(({ weight }) => weight === "information");
  }

  /** Whether nothing speaks against the two, and nothing is left open. */
  get suits(): boolean {
    // Of bare counts without a mount nothing is asked but their counts.
    if (!this.#mount)
      return this.set || !!moduleOf(this.driver.pitch) || !(this.driver.parts[0]!.id || this.driven.parts[0]!.id);
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

function sortsOf(gears: readonly GearOrCount[], pitch: Toothed, at: string): Map<string, Sort[]> {
  const shelves = new Map<string, Map<string, { sort: Sort; parts: Part[] }>>();
  // By what is written; two ways to write one pitch share a shelf.
  const written = new Map<string, Map<string, { sort: Sort; parts: Part[] }>>();
  for (const one of gears) {
    const part = gearOf(one, pitch, at);
    const { teeth, module, diametralPitch, pressureAngle, shift, tipDiameter } = part;
    const text = `${module} ${diametralPitch} ${pressureAngle}`;
    let shelf = written.get(text);
    if (!shelf) {
      const key = pitchKey(part);
      shelf = shelves.get(key) ?? new Map<string, { sort: Sort; parts: Part[] }>();
      shelves.set(key, shelf);
      written.set(text, shelf);
    }
    const key = `${teeth} ${shift} ${tipDiameter}`;
    const alike = shelf.get(key);
    // A bare count that comes again is the same one.
    if (alike && part.id) alike.parts.push(part);
    else if (!alike) {
      const parts = [part];
      const plain = !shift && tipDiameter === undefined;
      shelf.set(key, {
        parts,
        sort: { teeth, pitch: { module, diametralPitch, pressureAngle } as Toothed, plain, parts },
      });
    }
  }
  return new Map(
    [...shelves].map(([key, shelf]) => [
      key,
      [...shelf.values()].map(({ sort, parts }) => {
        parts.sort(byId);
        return sort;
      }),
    ]),
  );
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
export function meetingOf(part: Part, mount: TeethMount | undefined, at = ""): Meeting {
  const { driver, driven, module, diametralPitch, pressureAngle } = setOf(part, `${at}sets`);
  const pitch = { module, diametralPitch, pressureAngle } as Toothed;
  const sort = (teeth: number): Sort => ({ teeth, pitch, plain: true, parts: [part] });
  return new Meeting(sort(driver), sort(driven), mount, true);
}

/** The mount as the teeth see it, with the pitch that it is counted in; what holds the gears is looked at elsewhere. */
export function mountOf({ mount, pitch = {}, internal }: GearChoice): TeethMount | undefined {
  if (!mount) return undefined;
  const { shaft: _, steps: _steps, hubHoles: _holes, reach: _reach, line: _line, ...rest } = mount;
  return { ...(moduleOf(rest) ? rest : { ...rest, ...pitch }), ...(internal && { internal }) };
}
