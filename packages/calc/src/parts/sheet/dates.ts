import type { CellContext, CellReader } from "./meaning.js";
import { plain } from "./plain.js";

/** Months from January, in the six languages, as they are shortened; longer forms begin so. */
const monthStems = [
  "jan janv enero ene يناير كانون الثاني",
  "feb fevr febr فبراير شباط",
  "mar marz mars مارس آذار",
  "apr avr abr أبريل ابريل نيسان",
  "mai may مايو أيار",
  "jun juin يونيو حزيران",
  "jul juil يوليو تموز",
  "aug aou ago أغسطس اغسطس آب",
  "sep سبتمبر أيلول",
  "oct okt أكتوبر اكتوبر تشرين الأول",
  "nov نوفمبر تشرين الثاني",
  "dec dez dic ديسمبر كانون الأول",
];
/** Words beside a date that say nothing more: days of the week are not among them, since mai and mar are months and days. */
const fillers = new Set([
  "",
  "de",
  "del",
  "der",
  "den",
  "le",
  "the",
  "of",
  "er",
  "st",
  "nd",
  "rd",
  "th",
  "am",
  "vom",
  "on",
]);

let stems: readonly (readonly string[])[] | undefined;

function monthOf(word: string): number | undefined {
  stems ??= monthStems.map((one) => one.split(" ").map(plain));
  const isArabic = word > "\u0600";
  const index = stems.findIndex((list) =>
    list.some((stem) => (isArabic ? word === stem : stem.length > 2 && word.startsWith(stem))),
  );
  return index < 0 || word.length > 10 ? undefined : index + 1;
}

const two = (number: number): string => String(number).padStart(2, "0");

/** A day that exists, as a build document writes it. */
function isoOf(year: number, month: number, day: number): string | undefined {
  const last = [31, year % 4 || (!(year % 100) && year % 400) ? 28 : 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][
    month - 1
  ];
  return last && day >= 1 && day <= last && year >= 1900 && year < 2200
    ? `${year}-${two(month)}-${two(day)}`
    : undefined;
}

const fullYear = (text: string): number =>
  text.length > 2 ? Number(text) : Number(text) + (Number(text) < 80 ? 2000 : 1900);

/** A date as three numbers, before it is known which of the first two is the day. */
const numeric = /^(\d{1,2})([-./]) ?(\d{1,2})\2 ?(\d{4}|\d\d)$/;

/** A time of day behind a date is nobody's concern. */
const dateOnly = (text: string): string =>
  text.replace(/[T ,]+\d{1,2}:\d\d(:\d\d)?(\.\d+)?( ?[ap]\.?m\.?)?(Z|[+-]\d\d:?\d\d)?$/i, "");

/** Which of the first two numbers is the day, and which years are written in full, among the dates of a column. */
export function datesIn(
  texts: Iterable<string>,
  isJapanese: boolean,
): {
  readonly order?: "day-month" | "month-day";
  readonly years: ReadonlySet<number>;
} {
  const orders = new Set<"day-month" | "month-day">();
  const years = new Set<number>();
  for (const text of texts) {
    if (text.length > 40) continue;
    const [year] = /\d{4}/.exec(text) ?? [];
    if (year && Number(year) > 1900 && Number(year) < 2200) years.add(Number(year));
    const [, first, sign, second, third] = numeric.exec(dateOnly(text)) ?? [];
    if (!first || sign === ".") continue;
    // Where the year can stand first, a number above 12 is no day yet.
    if (Number(first) > 12 && !(isJapanese && third!.length === 2)) orders.add("day-month");
    if (Number(second) > 12) orders.add("month-day");
  }
  const [order] = orders;
  return { ...(order && orders.size === 1 && { order }), years };
}

/** The day that a text is, the two that it can be, or what is missing. */
function dayOf(text: string, context: CellContext): string | readonly [string, string] | "partial" | undefined {
  const [, year, month, day] =
    /^(\d{4}) ?[-./年] ?(\d{1,2}) ?[-./月] ?(\d{1,2})日?$/.exec(text) ?? /^(\d{4})(\d\d)(\d\d)$/.exec(text) ?? [];
  if (year) return isoOf(Number(year), Number(month), Number(day));
  const numbers = numeric.exec(text);
  if (numbers) return numericDay(numbers, context);
  const words = plain(text).match(/\d+|[^\d .,/-]+/g) ?? [];
  const months = new Set(words.flatMap((word) => monthOf(word) ?? []));
  const [named] = months;
  const left = words.filter((word) => monthOf(word) === undefined && !fillers.has(word));
  const [years, days] = [left.filter((word) => /^\d{4}$/.test(word)), left.filter((word) => /^\d{1,2}$/.test(word))];
  if (!named || months.size > 1 || left.length !== years.length + days.length || days.length > 2 || years.length > 1)
    return /^(\d{4})[-/.年]\d{1,2}月?$|^\d{1,2}[-/.]\d{4}$|^\d{4}$|^\d{1,2}[./]\d{1,2}\.?$|^\d{1,2}月\d{1,2}日$/.test(
      text,
    )
      ? "partial"
      : undefined;
  if (years.length && days.length === 1) return isoOf(Number(years[0]), named, Number(days[0]));
  if (!years.length && days.length === 2) return isoOf(fullYear(days[1]!), named, Number(days[0]));
  return "partial";
}

function numericDay(
  numbers: readonly string[],
  { order, years, isJapanese }: CellContext,
): string | readonly [string, string] | undefined {
  const [, first, sign, second, third] = numbers as unknown as [string, string, string, string, string];
  const [a, b, year] = [Number(first), Number(second), fullYear(third)];
  const [dayFirst, monthFirst] = [isoOf(year, b, a), isoOf(year, a, b)];
  const isSaid = order === "day-month" || order === "month-day";
  if (isJapanese && third.length === 2 && !years?.has(year)) {
    const yearFirst = isoOf(fullYear(first), b, Number(third));
    if (yearFirst && !dayFirst) return yearFirst;
    if (yearFirst && dayFirst && !isSaid) return [yearFirst, dayFirst];
  }
  if (sign === ".") return dayFirst;
  if (!dayFirst || !monthFirst || dayFirst === monthFirst) return dayFirst ?? monthFirst;
  return isSaid ? (order === "day-month" ? dayFirst : monthFirst) : [dayFirst, monthFirst];
}

/** Days from the end of 1899, as a spreadsheet counts them. */
function serialDay(text: string): string | undefined {
  const days = /^\d{5}$/.test(text) ? Number(text) : 0;
  return days > 36_000 && days < 73_000
    ? new Date(Date.UTC(1899, 11, 30 + days)).toISOString().slice(0, 10)
    : undefined;
}

/** The date of a price. What both 3 October and 10 March can be is asked about, unless another date of the column decides. */
export const readDate: CellReader = (text, context) => {
  if (text.length > 40) return { ask: { code: "date-unclear" } };
  const day = dayOf(dateOnly(text), context);
  if (day === "partial") return { ask: { code: "date-partial" } };
  if (typeof day === "string") return { set: { checked: day } };
  if (day) {
    const orders = ["day-month", "month-day"] as const;
    // No order of day and month gives a date whose year is first: it is chosen for its cell alone.
    const choices = day.map((answer) => {
      const order = orders.find((one) => dayOf(dateOnly(text), { ...context, order: one }) === answer);
      return { answer, ...(order && { column: { order } }) };
    });
    return { ask: { code: "date-ambiguous", choices } };
  }
  const serial = serialDay(text);
  return serial
    ? { set: { checked: serial }, ask: { code: "date-serial", guess: serial } }
    : { ask: { code: "date-unclear" } };
};
