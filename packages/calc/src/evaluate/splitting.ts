import { splitsOf, type Output, type SplitPlace } from "../drivetrain/index.js";
import { bounded, rational, type Rational } from "../exact/index.js";
import type { Released, Situation } from "./drive.js";
import { Quantity } from "./quantity.js";
import { sumOf, textOf } from "./sum.js";
import { rolledBy } from "./wheel.js";

/** What splitting asks of an output. */
export interface Axle {
  readonly output: Output;
  readonly label: string;
  readonly state: "driven" | Released;
  readonly locked: Quantity | undefined;
}

/** An output, or a place where the drive splits on. */
type Fed = Axle | Place;

/** What is taken for granted where no output that a differential drives has a wheel: that the tyres are equal. */
export type TyreAssumption = "equal tyres";

/** A place where the drive splits, as it stands. */
class Place {
  readonly at: SplitPlace;
  readonly fed: readonly Fed[];
  #terms: readonly Quantity[] | undefined;

  constructor(at: SplitPlace, fed: readonly Fed[]) {
    this.at = at;
    this.fed = fed;
  }

  /** Whether what is fed here may turn apart. */
  get isOpen(): boolean {
    return this.at.split?.kind === "differential" && this.fed.length > 1;
  }

  get #driven(): readonly Fed[] {
    return this.fed.filter((one) => one.state === "driven");
  }

  /** Whether one of those that it lets turn apart is let go of: it takes whatever it likes. */
  get isLoose(): boolean {
    return this.isOpen && this.fed.some((one) => one.state === "free");
  }

  /** What becomes of its shaft: loose where an open split is, driven where it drives anything, else as what it feeds. */
  get state(): "driven" | Released {
    if (this.isLoose) return "free";
    if (this.#driven.length) return "driven";
    return this.fed.some((one) => one.state === "held") ? "held" : "free";
  }

  /** The part of its torque that goes to one of those it feeds; the parts together 1. */
  share(one: Fed): Rational {
    const { feeds, split } = this.at;
    const parts = feeds.map(({ id }) => rational(split?.share?.[id] ?? 1));
    return parts[this.fed.indexOf(one)]!.over(parts.reduce((sum, part) => sum.plus(part)));
  }

  /** Every driven output behind it. */
  get outputs(): readonly Axle[] {
    return this.#driven.flatMap((one) => (one instanceof Place ? one.outputs : one));
  }

  /** Motor turns for one unit of road, as a sum; nothing where nothing tells them. Axles of a spool may ask for different ones: anything between. */
  terms(road: Road): readonly Quantity[] {
    return (this.#terms ??= this.isOpen
      ? this.#driven.flatMap((one) => termsOf(one, road).map((term) => term.times(this.share(one))))
      : this.#between(road));
  }

  #between(road: Road): readonly Quantity[] {
    if (this.#driven.length === 1) return termsOf(this.#driven[0]!, road);
    const [first, ...others] = this.#driven.map((one) => sumOf(termsOf(one, road)));
    const apart = others.map((other) => other.over(first!)).filter((one) => !one.isExact || !one.factor.equals(1));
    if (!apart.length) return [first!];
    let [low, high] = [rational(1), rational(1)];
    for (const { bounds } of apart) {
      if (bounds.low.compare(low) < 0) low = bounds.low;
      if (bounds.high.compare(high) > 0) high = bounds.high;
    }
    const key = `spool ${this.at.id} from 1 to ${apart.map(textOf).join(" and ")}`;
    return [first!.times(new Quantity(rational(1), [{ key, interval: bounded(low, high), power: 1 }]))];
  }
}

/** Motor turns for one unit of road that an output asks for. */
type Road = (output: Axle) => Quantity;

const termsOf = (one: Fed, road: Road): readonly Quantity[] => (one instanceof Place ? one.terms(road) : [road(one)]);

/** The way from the centre to an output through the places where the drive splits. */
export interface Way {
  /** From the outermost place that matters, the centre, to the last. */
  readonly places: readonly Place[];
  /** What each of them feeds on this way. */
  readonly fed: readonly Fed[];
}

/** How the places where a drive splits hang together. Made only where a differential is open. */
export class Splitting {
  readonly #ways = new Map<Axle, Way>();

  constructor({ build }: Situation, outputs: readonly Axle[]) {
    const places = new Map(splitsOf(build).map((place) => [place.id, place]));
    const byOutput = new Map(outputs.map((output) => [output.output, output]));
    const make = (at: SplitPlace): Place =>
      new Place(
        at,
        at.feeds.map((one) => byOutput.get(one as never) ?? make(places.get(one.id)!)),
      );
    const walk = (place: Place, before: Way): void => {
      for (const one of place.fed) {
        const way = { places: [...before.places, place], fed: [...before.fed, one] };
        if (one instanceof Place) walk(one, way);
        else this.#ways.set(one, way);
      }
    };
    walk(make(places.get("centre")!), { places: [], fed: [] });
  }

  /** Whether any of the places is open. */
  get isOpen(): boolean {
    return [...this.#ways.values()].some(({ places }) => places.some((place) => place.isOpen));
  }

  #wayTo(output: Axle): Way {
    return this.#ways.get(output) ?? { places: [], fed: [] };
  }

  /** The open places on the way to an output, from the centre outwards. */
  openOn(output: Axle): readonly Place[] {
    return this.#wayTo(output).places.filter((place) => place.isOpen);
  }

  /** The open places at which two outputs can turn apart: where their ways part, and behind. */
  between(one: Axle, other: Axle): readonly Place[] {
    const [mine, theirs] = [this.#wayTo(one), this.#wayTo(other)];
    let shared = 0;
    while (mine.fed[shared] && mine.fed[shared] === theirs.fed[shared]) shared++;
    return [...new Set([...mine.places.slice(shared), ...theirs.places.slice(shared)])].filter(({ isOpen }) => isOpen);
  }

  /** The part of the torque that reaches an output through all differentials before it. */
  shareOf(output: Axle): Rational {
    const { places, fed } = this.#wayTo(output);
    return places.reduce((share, place, n) => (place.isOpen ? share.times(place.share(fed[n]!)) : share), rational(1));
  }

  /** Whether something that is let go of leaves open how fast an output turns; the place where it is. */
  looseOn(output: Axle): Place | undefined {
    return this.openOn(output).find((place) => place.isLoose);
  }

  /** The driven outputs that turn by the same road as this one, through the first open place on the way to it. */
  #together(output: Axle): readonly Axle[] {
    return this.openOn(output)[0]?.outputs ?? [];
  }

  /** The outputs without a wheel that leave open how fast this one turns straight on. */
  wheelless(output: Axle): readonly Axle[] {
    const together = this.#together(output);
    const without = together.filter((one) => !one.output.wheel);
    return together.length > 1 && without.length < together.length ? without : [];
  }

  assumes(output: Axle): TyreAssumption | undefined {
    const together = this.#together(output);
    return together.length > 1 && together.every((one) => !one.output.wheel) ? "equal tyres" : undefined;
  }

  /**
   * Motor turns for one wheel turn, straight on, over those with everything held together. Every axle behind an open place has one
   * road speed there, and the shaft before it turns by the shares: what the shaft asks for a unit of road over what this
   * way asks, from each open place to the next spool.
   */
  straightOver(output: Axle): Quantity | undefined {
    if (!output.locked || this.looseOn(output) || this.wheelless(output).length) return undefined;
    const equal = this.assumes(output) !== undefined || this.#together(output).length < 2;
    const road: Road = ({ locked, output: { wheel } }) => (equal ? locked! : locked!.over(rolledBy(wheel!)));
    const { places, fed } = this.#wayTo(output);
    let quotient = new Quantity(rational(1));
    let from: Place | undefined;
    places.forEach((place, n) => {
      if (place.isOpen) from ??= place;
      const next = fed[n]!;
      const end = !(next instanceof Place) || (next.fed.length > 1 && !next.isOpen);
      if (from && end) {
        quotient = quotient.times(sumOf(from.terms(road)).over(sumOf(termsOf(next, road))));
        from = undefined;
      }
    });
    return quotient;
  }
}
