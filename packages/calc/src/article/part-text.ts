import { spotOf, type Build, type Part } from "../drivetrain/index.js";
import { bounded, type Rational } from "../exact/index.js";
import { fillCount, isRightToLeft, pitchText } from "../languages/index.js";
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

/** What a place in the build asks for: what it is, its counts, its pitch. */
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
  const kind = (reports.partKinds as Readonly<Record<string, string>>)[is[0]!] ?? "";
  const texts = [
    `${kind} ${counts}`.trim(),
    pitch && pitchText(pitch, reports.reasons),
    given(beltPitch),
    length && drawnLength(speaker, bounded(length)),
  ];
  return listed(
    texts.filter((text): text is string => !!text),
    words,
  );
}
