import { unmarkedGear, type Gauge, type PitchCandidate, type Settling, type UnmarkedGear } from "../counted/index.js";
import type { Part } from "../drivetrain/index.js";
import { bounded, lengthOf, type Bounded, type Rational } from "../exact/index.js";
import { fill, pitchText } from "../languages/index.js";
import { writeCount } from "../report/index.js";
import { listed } from "./block.js";
import { drawnLength } from "./drawing.js";
import type { Reporter } from "./speaker.js";
import { faultText, plainNumber, typedCounts, typedLength, typedNumber } from "./typed.js";

/** The fields of a gear without a mark, as somebody types in them; an empty one says nothing. */
export const unmarkedFields = [
  ...(["teeth", "outside", "within", "shiftFrom", "shiftTo", "spanTeeth", "span", "spanNext", "spanWithin"] as const),
  ...(["centre", "centreWithin", "otherTeeth"] as const),
] as const;
/** What is typed about a gear without a mark. */
export type UnmarkedField = (typeof unmarkedFields)[number];

/** What is known about a gear without a mark. */
export interface AskedGear extends Readonly<Partial<Record<UnmarkedField, string>>> {
  /** Read between the jaws of a calliper, which take less than the diameter where the count is odd. */
  readonly jaws?: boolean;
  /** The other gear of the donor is a ring, or this one is. */
  readonly internal?: boolean;
  /** `"1"` full depth, `"0.8"` stub; nothing where nobody knows. */
  readonly height?: string;
  /** Degrees; nothing where nobody knows. */
  readonly angle?: string;
}

/** A pitch that the gear can have. */
export interface SaidPitch {
  readonly text: string;
  /** The gear as a part of that pitch. */
  readonly part: Part;
}

/** What `mw-unmarked-gear` says. */
export interface SaidUnmarked {
  /** What is wrong with what was typed, by field. */
  readonly faults: Readonly<Partial<Record<UnmarkedField, string>>>;
  /** The unit that a bare number is in. */
  readonly unit: string;
  readonly outcome: string;
  readonly canBe: readonly SaidPitch[];
  /** Each with what it would read. */
  readonly cannotBe: readonly string[];
  /** What these measurements never tell, which pitches they leave together, what would settle it. */
  readonly notes: readonly string[];
}

/** What nobody says is read to within this. */
export const usualWithin = (unit: string): string => (unit === "in" ? "0.001" : "0.02");

const shownBlurs = 3;

/** A gear's question from what was typed, and what is wrong with that. */
class Form {
  readonly faults: Partial<Record<UnmarkedField, string>> = {};
  readonly #speaker: Reporter;
  readonly #asked: AskedGear;
  readonly unit: string;

  constructor(speaker: Reporter, asked: AskedGear) {
    this.#speaker = speaker;
    this.#asked = asked;
    this.unit = speaker.evaluation.build.lengths ?? "mm";
  }

  text(field: UnmarkedField): string | undefined {
    return this.#asked[field]?.trim() || undefined;
  }

  #wrong(field: UnmarkedField, expected: Parameters<typeof faultText>[2]): undefined {
    this.faults[field] = faultText(this.#speaker, this.text(field)!, expected);
    return undefined;
  }

  count(field: UnmarkedField): number | undefined {
    const text = this.text(field);
    if (text === undefined) return undefined;
    const counts = typedCounts(text);
    return counts?.[0] === counts?.[1] && counts ? counts[0] : this.#wrong(field, "count");
  }

  number(field: UnmarkedField): string | undefined {
    const text = this.text(field);
    if (text === undefined) return undefined;
    return typedNumber(text) ? plainNumber(text) : this.#wrong(field, "any");
  }

  /** A length between its two ends. */
  measured(field: UnmarkedField, within: UnmarkedField): { readonly from: string; readonly to: string } | undefined {
    const text = this.text(field);
    const about = this.text(within) ?? usualWithin(this.unit);
    const by = typedNumber(about)?.sign === 0 ? "0 mm" : typedLength(about, this.unit);
    if (by === undefined) this.#wrong(within, "length");
    if (text === undefined) return undefined;
    const length = typedLength(text, this.unit);
    if (length === undefined) return this.#wrong(field, "length");
    if (by === undefined) return undefined;
    const [middle, off] = [lengthOf(length), lengthOf(by)];
    if (middle.compare(off) <= 0) return this.#wrong(within, "length");
    const end = (value: Rational): string => `${value.toFraction()} mm`;
    return { from: end(middle.minus(off)), to: end(middle.plus(off)) };
  }

  question(): UnmarkedGear | undefined {
    const { jaws, internal, height, angle } = this.#asked;
    const teeth = this.count("teeth");
    const outside = this.measured("outside", "within");
    const [over, spanNext] = [this.measured("span", "spanWithin"), this.measured("spanNext", "spanWithin")];
    const spanTeeth = this.count("spanTeeth");
    const centre = this.measured("centre", "centreWithin");
    const otherTeeth = this.count("otherTeeth");
    const [from, to] = [this.number("shiftFrom"), this.number("shiftTo")];
    const shift = (from ?? to) ? { from: from ?? "0", to: to ?? from! } : undefined;
    const span = over && spanTeeth ? { teeth: spanTeeth, over } : undefined;
    if (!teeth || !(outside ?? span ?? (centre && otherTeeth)) || Object.keys(this.faults).length) return undefined;
    return {
      teeth,
      ...(outside && { outside, ...(jaws && { jaws }) }),
      ...(span && { span, ...(spanNext && { spanNext }) }),
      ...(centre && otherTeeth && { donorCentre: { centre, otherTeeth, ...(internal && { internal }) } }),
      ...(height && { addendum: height }),
      ...(angle && { pressureAngles: [angle] }),
      ...(shift && { shift }),
    };
  }
}

/** A pitch with the angle and the height of teeth that were looked at. */
function candidateText({ reports, words }: Reporter, { pressureAngle, addendum, ...pitch }: PitchCandidate): string {
  const plain = pitchText(pitch, reports.reasons);
  const angled = pressureAngle === undefined ? plain : fill(reports.reasons.angle, plain, String(pressureAngle));
  if (addendum === undefined) return angled;
  return fill(words.aside, angled, String(addendum) === "1" ? reports.unmarked.full : reports.unmarked.stub);
}

function gaugeText({ reports, locale }: Reporter, gauge: Gauge, teeth = 0): string {
  return fill(reports.unmarked.gauges[gauge], writeCount(teeth, locale), writeCount(teeth + 1, locale));
}

/** Which measurement would tell what is left apart, and what each would read. */
function settledText(
  speaker: Reporter,
  texts: readonly string[],
  { gauge, teeth, expected, apart, settles }: Settling,
): string {
  const { reports, words } = speaker;
  const readings = texts.map((text, n) => fill(words.told, text, drawnLength(speaker, expected[n]!)));
  return fill(
    settles ? reports.unmarked.settles : reports.unmarked.narrows,
    gaugeText(speaker, gauge, teeth),
    readings.join("; "),
    drawnLength(speaker, bounded(apart.over(2))),
  );
}

const partOf = (teeth: number, { addendum: _, ...pitch }: PitchCandidate, angle: string | undefined): Part => {
  const pressureAngle = pitch.pressureAngle ?? (angle || undefined);
  const name = pitch.module === undefined ? `${String(pitch.diametralPitch)}-dp` : `m${String(pitch.module)}`;
  return {
    id: `gear-${teeth}-${name.replace(".", "-")}`,
    is: "gear",
    teeth,
    ...pitch,
    ...(pressureAngle !== undefined && { pressureAngle }),
    owned: 1,
  };
};

/** What `mw-unmarked-gear` says: what a gear without a mark can be and cannot be, and what would settle it. */
export function sayUnmarked(speaker: Reporter, asked: AskedGear): SaidUnmarked {
  const { reports, words } = speaker;
  const form = new Form(speaker, asked);
  const question = form.question();
  const { faults, unit } = form;
  const nothing = { faults, unit, outcome: "", canBe: [], cannotBe: [], notes: [] };
  if (!question) return nothing;
  let found: ReturnType<typeof unmarkedGear>;
  try {
    found = unmarkedGear(question);
  } catch (error) {
    return { ...nothing, outcome: (error as Error).message };
  }
  const { canBe, cannotBe, untold, blurs, settledBy } = found;
  const texts = canBe.map((one) => candidateText(speaker, one));
  const reading = (read: Bounded): string => drawnLength(speaker, read);
  const isOfPitches = ({ pitches: [one, other] }: (typeof blurs)[number]): boolean =>
    pitchText(one, reports.reasons) !== pitchText(other, reports.reasons);
  const blurred = blurs
    .filter(isOfPitches)
    .map(({ gauge, pitches, apart }) =>
      fill(
        reports.unmarked.blur,
        gaugeText(speaker, gauge, question.span?.teeth),
        candidateText(speaker, pitches[0]),
        candidateText(speaker, pitches[1]),
        drawnLength(speaker, bounded(apart)),
      ),
    );
  const [best] = settledBy;
  return {
    faults,
    unit,
    outcome: canBe.length ? reports.unmarked.canBe : reports.unmarked.none,
    canBe: canBe.map((one, n) => ({ text: texts[n]!, part: partOf(question.teeth, one, asked.angle) })),
    cannotBe: cannotBe.map(({ candidate, against: [first] }) => {
      const text = candidateText(speaker, candidate);
      if (!first) return fill(words.told, text, reports.unmarked.together);
      const { gauge, expected, read } = first;
      const gauged = gaugeText(speaker, gauge, question.span?.teeth);
      return fill(words.told, text, fill(reports.unmarked.against, gauged, reading(expected), reading(read)));
    }),
    notes: [
      ...(untold.length
        ? [
            fill(
              reports.unmarked.never,
              listed(
                untold.map((one) => reports.unmarked.untold[one]),
                words,
              ),
            ),
          ]
        : []),
      ...new Set(blurred.slice(0, shownBlurs)),
      ...(best ? [settledText(speaker, texts, best)] : []),
    ],
  };
}
