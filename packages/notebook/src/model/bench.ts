import { countsBehind } from "@meshwright/calc/counted";
import { oneIn, stagesOf, type Measurement, type Mount } from "@meshwright/calc/drivetrain";
import { bounded, lengthOf, rational, type Bounded, type Rational } from "@meshwright/calc/exact";
import { countedIn, fits, rangesOf } from "@meshwright/calc/fit";
import { centreDistance, type ToothPair } from "@meshwright/calc/gears";
import type { Finding } from "@meshwright/calc/stages";
import { typedLength } from "./typed.js";
import type { BenchNote, Notebook } from "./notebook.js";
import type { Session } from "./session.js";

/** Notes turns that were counted by hand, with the counts that they were made with. */
export function measure(session: Session, counted: Omit<Measurement, "date" | "with">): readonly Finding[] {
  const build = session.build!;
  const measurement: Measurement = { ...counted, date: session.today, with: countsBehind(build, counted.what) };
  const label = build.outputs.find(({ id }) => id === counted.what)?.label ?? counted.what;
  return session.change({ measurements: [...(build.measurements ?? []), measurement] }, `${label} turned by hand`);
}

/** So far a centre distance that somebody reads off may be from what it is, in millimetres. */
const readingMiss = rational("0.2");

const inMm = (length: Rational): string => `${length.toDecimal({ maximumFractionDigits: 2 })} mm`;

/**
 * Notes a centre distance that was read off, with the counts that it was read with.
 *
 * @returns why it was not taken; nothing where it was
 */
export function noteCentre(session: Session, of: string, typed: string): string | undefined {
  const { build, notebook } = session;
  const stage = stagesOf(build!).find((one) => one.stage.id === of)!.stage;
  const name = stage.label ?? of;
  const text = typedLength(typed);
  if (text === undefined)
    return `Found “${typed.trim().slice(0, 40)}”, ${name}; expected a length above 0 such as 31.2 mm, 31,2 or 1.23 in.`;
  const { value } = oneIn(build!);
  const counts = Object.fromEntries(["driver", "driven"].map((field) => [`${of}.${field}`, value(`${of}.${field}`)]));
  const note: BenchNote = { of, text, date: session.today, with: counts };
  session.put({ bench: [...(notebook.bench ?? []), note] }, `${name}, centre distance ${text}`);
  return undefined;
}

/** The last centre distance that was read off at a mount, and what it says of the drivetrain. */
interface CentreRead {
  readonly stage: string;
  readonly label: string;
  readonly note: BenchNote;
  readonly verdict: "agrees" | "disagrees" | "cannot tell";
  /** Why: the rest of a sentence. */
  readonly why: string;
}

/** What is worked out between the axes of a pair, set as its mount says or must; nothing where it cannot be. */
function centreAsSet(pair: ToothPair, mount: Mount): Bounded | undefined {
  try {
    // Opened, a ring and its gear come closer together.
    const side = pair.internal ? -1 : 1;
    const plain = centreDistance(pair);
    const at = (opening: string): Bounded | undefined => plain?.plus(lengthOf(opening).times(side));
    const least = fits({ pair, mount: countedIn(mount, pair) }).centre ?? at(mount.opening ?? "0 mm");
    const most = mount.openingTo === undefined ? undefined : at(mount.openingTo);
    if (!least || !most) return least;
    // A mount that pushes it beyond all that is wanted leaves nothing to choose.
    if (side > 0) return most.high.compare(least.high) > 0 ? bounded(least.low, most.high) : least;
    return most.low.compare(least.low) < 0 ? bounded(most.low, least.high) : least;
  } catch {
    return undefined;
  }
}

/** Where a mount ends, if a length is outside of it. */
function outside(length: Rational, pair: ToothPair, mount: Mount): string | undefined {
  let ranges: ReturnType<typeof rangesOf>;
  try {
    ranges = rangesOf(countedIn(mount, pair), pair);
  } catch {
    return undefined;
  }
  const isIn = ranges.some(
    ({ from, to }) =>
      !(from && length.plus(readingMiss).compare(from.low) < 0) &&
      !(to && length.minus(readingMiss).compare(to.high) > 0),
  );
  const [from, to] = [ranges[0]?.from, ranges.at(-1)?.to];
  if (isIn || (!from && !to)) return undefined;
  const ends = [...(from ? [inMm(from.low)] : []), ...(to ? [inMm(to.high)] : [])];
  return `the mount sets ${ends.length === 2 ? ends.join(" to ") : from ? `${ends[0]} and more` : `up to ${ends[0]}`}`;
}

/** What was read off last at each mount, against what is worked out and what the mount can set. */
export function centresRead({ build, bench = [] }: Pick<Notebook, "build" | "bench">): readonly CentreRead[] {
  const stages = build ? stagesOf(build).map(({ stage }) => stage) : [];
  return (build?.mounts ?? []).flatMap((mount): readonly CentreRead[] => {
    const note = bench.findLast(({ of }) => of === mount.stage);
    const stage = stages.find(({ id }) => id === mount.stage);
    if (!note || !stage) return [];
    const told = (verdict: CentreRead["verdict"], why: string): readonly CentreRead[] => [
      { stage: stage.id, label: stage.label ?? stage.id, note, verdict, why },
    ];
    const text = typedLength(note.text);
    if (text === undefined) return told("disagrees", `“${note.text.slice(0, 40)}” is no length`);
    const { value } = oneIn(build!);
    if (Object.entries(note.with).some(([address, count]) => value(address) !== count))
      return told("cannot tell", "it was read with other counts");
    const length = lengthOf(text);
    const pair = stage as unknown as ToothPair;
    const centre = centreAsSet(pair, mount);
    const beyond = outside(length, pair, mount);
    const [less, more] = [centre?.low.minus(length), centre && length.minus(centre.high)];
    const by = [less, more].find((one) => one && one.compare(readingMiss) > 0);
    const shown = centre && (centre.isExact ? inMm(centre.low) : `${inMm(centre.low)} to ${inMm(centre.high)}`);
    const away =
      by &&
      `${inMm(by)} ${by === less ? "less" : "more"} than ${shown} that is worked out, and reading it may be ${inMm(readingMiss)} out`;
    if (away ?? beyond) return told("disagrees", [away, beyond].filter(Boolean).join("; "));
    return centre
      ? told("agrees", `with ${shown} that is worked out, within ${inMm(readingMiss)}`)
      : told("cannot tell", "the pitch is not known");
  });
}
