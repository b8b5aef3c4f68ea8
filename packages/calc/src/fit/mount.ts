import { bounded, type Bounded, ratioOf } from "../exact/index.js";
import { modulesAcross } from "../gears/index.js";
import { apart } from "./apart.js";
import {
  type CentreMount,
  holesOf,
  type Limit,
  limitsOf,
  type Openings,
  openingsOf,
  type PairPitch,
} from "./limits.js";
import { withKnownShafts } from "./measured.js";
import { rangesOf, sumWithin, tightest } from "./ranges.js";
import { lacking, type Reason } from "./reason.js";

export interface Setting {
  /** What speaks against it, at each end the tightest limit first. */
  readonly reasons: readonly Reason[];
  /** The smallest opening, of those wanted, that the mount can set, in millimetres. */
  readonly opening: Bounded;
}

/** A pair that wants to run at its theoretical centre distance, opened so far. */
interface Wish {
  readonly theoretical: Bounded;
  /** 1, and −1 for a ring: which way an opening moves it. */
  readonly side: 1 | -1;
  readonly openings: Openings;
}

const openingAt = ({ theoretical, side }: Wish, centre: Bounded): Bounded => centre.minus(theoretical).times(side);

/** What the ends of the slot, of whatever kind, have to say. */
function setInSlot(mount: CentreMount, pair: PairPitch, wish: Wish): Setting {
  const { theoretical, side, openings } = wish;
  const limits = limitsOf(mount, pair);
  const [nearest, farthest] = [theoretical.plus(openings.closest), theoretical.plus(openings.farthest)];
  // A slot that begins beyond the closest that the pair runs at pushes it out, as far as it may be opened.
  const half = modulesAcross(pair, ratioOf(1, 2))!;
  const begin = tightest(limits, "from");
  const pushed = begin?.compare(nearest) === 1 && begin.compare(farthest) !== 1 ? begin : nearest;
  let opening = bounded(openings.least);
  const reasons = limits.flatMap((limit) => {
    const { kind: label, end, at: available } = limit;
    const isNear = end === "from";
    const needed = isNear ? farthest : pushed;
    const short = isNear ? apart(available, needed) : apart(needed, available);
    const teeth = sumWithin(limit, half, isNear ? openings.farthest : openings.closest);
    const looser = openingAt(wish, available);
    if (isNear === side > 0 && looser.low.compare(opening.low) > 0) opening = looser;
    return lacking(isNear ? "too-close" : "too-far", short, { label, needed, available, teeth });
  });
  return { reasons: reasons.sort((a, b) => b.short!.low.compare(a.short!.low)), opening };
}

/** How far a centre distance lies outside of what limits leave, which is not where it lies. */
function outsideOf(limits: readonly Limit[], centre: Bounded): Bounded {
  const [from, to] = [tightest(limits, "from"), tightest(limits, "to")];
  const begins = from?.minus(centre);
  return begins && begins.low.sign > 0 ? begins : centre.minus(to!);
}

/** Which hole of a row takes the pair with the least opening, of those that the slot leaves; else the nearest, and how far off. */
function setInHole(mount: CentreMount, pair: PairPitch, wish: Wish): Setting {
  const { theoretical, side, openings } = wish;
  const left = rangesOf(mount, pair).map(({ from }) => from!);
  const holes = (left.length ? left : holesOf(mount).map((hole) => bounded(hole)))
    .map((available) => {
      const opening = openingAt(wish, available);
      const [tight, loose] = [opening.negate().plus(openings.least), opening.minus(openings.most)];
      return { available, opening, short: tight.low.compare(loose.low) > 0 ? tight : loose };
    })
    .sort((a, b) => a.opening.low.compare(b.opening.low));
  const fitting = holes.find(({ short }) => short.high.sign <= 0);
  const hole = fitting ?? [...holes].sort((a, b) => a.short.low.compare(b.short.low))[0]!;
  const needed = theoretical.plus(openings.least.times(side));
  const { available, opening, short } = hole;
  // Where the slot leaves none, the hole that would fit lies outside of it.
  const off = fitting && !left.length ? outsideOf(limitsOf(mount, pair), available) : short;
  return { reasons: lacking("no-hole", off, { needed, available }), opening };
}

/**
 * Whether a mount can set a theoretical centre distance with an opening of those wanted. What is measured over shafts that
 * nobody has told is not known; all else is looked at.
 */
export function setCentre(asked: CentreMount, pair: PairPitch, theoretical: Bounded): Setting {
  const mount: CentreMount = withKnownShafts(asked);
  const wish: Wish = { theoretical, side: pair.internal ? -1 : 1, openings: openingsOf(mount, pair) };
  const slot = setInSlot(mount, pair, wish);
  const hole = mount.holes?.length ? setInHole(mount, pair, wish) : undefined;
  const unknown: Reason[] = mount !== asked ? [{ code: "shafts-not-given", weight: "unknown" }] : [];
  return { reasons: [...slot.reasons, ...(hole?.reasons ?? []), ...unknown], opening: (hole ?? slot).opening };
}
