import { spotOf, type Build, type ChemistryName, type Part } from "../drivetrain/index.js";
import { bounded, type Rational } from "../exact/index.js";
import { fill, fillCount, isRightToLeft, pitchText } from "../languages/index.js";
import { packVolts } from "../motion/index.js";
import type { Need, OrderList } from "../parts/index.js";
import { driveText } from "../report/index.js";
import { beltTexts } from "./belts.js";
import { listed } from "./block.js";
import { drawnLength } from "./drawing.js";
import type { Reporter } from "./speaker.js";

/** The parts that a build lists. */
export const partsOf = (build: Build | undefined): readonly Part[] => (build?.parts ?? []) as readonly Part[];

/** An amount of money as its locale writes it, from exact digits. */
export function moneyText(amount: Rational, currency: string, locale: string): string {
  const digits = new Intl.NumberFormat(locale, { style: "currency", currency });
  const { maximumFractionDigits = 2 } = digits.resolvedOptions();
  const text = amount.toDecimal({ minimumFractionDigits: maximumFractionDigits, maximumFractionDigits });
  return digits.format(text as unknown as number);
}

/** What a part is called. */
export const partName = ({ name, id, teeth, driver, driven }: Part): string =>
  name ?? `${id}${(teeth ?? driver) ? ` (${teeth ?? `${driver}, ${driven}`})` : ""}`;

/**
 * A date as its locale writes it, set apart from what stands beside it where text runs from the right; text that is no date
 * stays.
 *
 * @param date a day of the calendar, "2026-10-04", or a moment: the day that it is here
 */
export function dateText(date: string | Date, locale: string, dateStyle: "medium" | "long" = "medium"): string {
  const isMoment = typeof date !== "string";
  const day = isMoment ? date : new Date(`${date}T12:00:00Z`);
  if (Number.isNaN(day.getTime())) return String(date);
  const text = new Intl.DateTimeFormat(locale, { dateStyle, ...(!isMoment && { timeZone: "UTC" }) }).format(day);
  return isRightToLeft(locale) ? `\u2068${text}\u2069` : text;
}

/** What all that is to be bought costs, by currency; what has no price, and what no part answers, is counted. */
export function sumText(
  { sums, unpriced }: Pick<OrderList, "sums" | "unpriced">,
  { reports, locale }: Reporter,
  missing = 0,
): string {
  const amounts = sums.map(({ amount, currency }) => moneyText(amount, currency, locale));
  const more = [
    unpriced ? fillCount(reports.unpriced, unpriced, locale) : [],
    missing ? fillCount(reports.unlisted, missing, locale) : [],
  ];
  return [...amounts, ...more.flat()].join(` ${reports.and} `);
}

/** What is printed on packs of cells, in every language. */
const cellMarks: Readonly<Record<ChemistryName, string>> = {
  lipo: "LiPo",
  "lipo-high-voltage": "LiHV",
  "li-ion": "Li-ion",
  lifepo4: "LiFePO₄",
  nimh: "NiMH",
  lead: "Pb",
};

/** How a motor, a pack or a controller is rated, as it is marked: "2600 kV"; "4S2P LiPo", "14.8 V". */
function ratedTexts({ rated = {} }: Need, { words, writer }: Reporter): string[] {
  const { kv, turns, maxRpm, maxVolts, cells, parallel, chemistry, capacity } = rated;
  const marked = (value: string | number | undefined, unit: string, text = "{0}"): string[] =>
    value === undefined ? [] : [fill(text, `${writer.given(value)}${unit}`)];
  const rows = [...marked(cells, "S"), ...marked(parallel, "P")].join("");
  const pack = [rows, chemistry ? cellMarks[chemistry] : ""].filter(Boolean).join(" ");
  return [
    ...marked(kv, "\u00a0kV"),
    ...marked(turns, "T"),
    ...(pack ? [pack] : []),
    ...marked(packVolts(rated)?.nominal.toDecimal(), "\u00a0V"),
    ...marked(capacity, "\u00a0Ah"),
    ...marked(maxRpm, "\u00a0min⁻¹", words.upTo),
    ...marked(maxVolts, "\u00a0V", words.upTo),
  ];
}

/** What a place in the build asks for: what it is, its counts, its pitch, or how it is rated. */
export function needText(need: Need, speaker: Reporter): string {
  const { words, reports, writer, locale, evaluation } = speaker;
  const { is, teeth, either, driver, driven, value, pitch, beltPitch, length } = need;
  const { diameter, loadedDiameter, travel, bore, outside, label } = need;
  const given = (text: string | number | undefined): string => (text === undefined ? "" : writer.given(text));
  const between = bore && outside && `${given(bore)}, ${given(outside)}`;
  const size = given(diameter ?? loadedDiameter ?? travel?.length) || between || label;
  const [first, second] = [given(driver), given(driven)];
  // The sun of a planetary set runs in its ring; of any other two gears one drives the other.
  const both = is.includes("planetary")
    ? `${words.joints.sun} ${first} ${words.joints["in ring"]} ${second}`
    : driveText([first, second], "arrow", writer);
  const stage = either && spotOf(evaluation.build, need.stage)?.stage;
  const counts = either
    ? new Intl.ListFormat(locale, { type: "disjunction" }).format(stage ? beltTexts(speaker, stage) : either.map(given))
    : given(teeth) || (driver && driven ? both : given(value) || (size ?? ""));
  // Of no kind of its own is only what a place of that name asks for.
  const kinds = reports.partKinds as Readonly<Record<string, string>>;
  const kind = kinds[is[0]!] ?? kinds[need.stage] ?? "";
  const rated = ratedTexts(need, speaker);
  const texts = [
    `${kind} ${counts || (rated.shift() ?? "")}`.trim(),
    ...rated,
    pitch && pitchText(pitch, reports.reasons),
    given(beltPitch),
    length && drawnLength(speaker, bounded(length)),
  ];
  return listed(
    texts.filter((text): text is string => !!text),
    words,
  );
}
