/** Text with no more than this many characters. */
export const longestText = 5000;

/** The plain values of a document: what is expected, in words, and as the pattern that its text must match. */
export interface Scalar {
  readonly expected: string;
  readonly pattern?: RegExp;
  /** JSON numbers that it takes as well: from this one up, or above it. */
  readonly from?: number;
  readonly above?: number;
  readonly to?: number;
  readonly whole?: boolean;
  /** The only ones. */
  readonly among?: readonly number[];
}

const number = String.raw`\d{1,12}(\.\d{1,12})?`;
const fraction = String.raw`\d{1,12}/[1-9]\d{0,11}`;
/** White space of any kind is white space: editors put in no-break and narrow ones. */
const unit = String.raw`\s*(mm|cm|m|in|ft)\s*`;
const notZero = "(?=[^1-9]*[1-9])";
const of = (source: string): RegExp => new RegExp(`^(${source})$`);

const long = "0[13578]|1[02]";
const leap = "[0-9]{2}(0[48]|[2468][048]|[13579][26])|([02468][048]|[13579][26])00";
/** The days of the Gregorian calendar. */
const day = [
  `[0-9]{4}-((${long})-(0[1-9]|[12][0-9]|3[01])|(0[469]|11)-(0[1-9]|[12][0-9]|30)|02-(0[1-9]|1[0-9]|2[0-8]))`,
  `(${leap})-02-29`,
].join("|");

/** ECMA-402, SetNumberFormatDigitOptions. */
const increments = [1, 2, 5, 10, 20, 25, 50, 100, 200, 250, 500, 1000, 2000, 2500, 5000];

export const scalars: Readonly<Record<string, Scalar>> = {
  id: {
    expected: "an id of small letters, digits and single hyphens, a letter first",
    pattern: of("(?!.*--)[a-z][a-z0-9-]{0,99}"),
  },
  text: { expected: `text of up to ${longestText} characters` },
  date: { expected: "a day of the calendar such as 2026-10-03", pattern: of(day) },
  format: { expected: '"meshwright-build/1"', pattern: of(String.raw`meshwright-build/1(\.0)?`) },
  count: {
    expected: "a whole number from 1 to 1000000",
    pattern: of("[1-9][0-9]{0,5}|1000000"),
    from: 1,
    to: 1e6,
    whole: true,
  },
  sets: { expected: "a whole number from 1 to 100", pattern: of("[1-9][0-9]?|100"), from: 1, to: 100, whole: true },
  significant: {
    expected: "a whole number from 1 to 21",
    pattern: of("[1-9]|1[0-9]|2[01]"),
    from: 1,
    to: 21,
    whole: true,
  },
  increment: {
    expected: `one of ${increments.join(", ")}`,
    pattern: of(increments.join("|")),
    from: 1,
    to: 5000,
    whole: true,
    among: increments,
  },
  digits: { expected: "a whole number from 0 to 100", pattern: of("[1-9]?[0-9]|100"), from: 0, to: 100, whole: true },
  whole: { expected: "a whole number from 0", pattern: of("[0-9]{1,6}"), from: 0, to: 1e6, whole: true },
  amount: {
    expected: 'an amount such as "4.20"',
    pattern: of(String.raw`\d{1,9}(\.\d{1,3})?`),
    from: 0,
    to: 1e9,
  },
  currency: { expected: "a currency's three letters, such as EUR", pattern: of("[A-Z]{3}") },
  positive: {
    expected: "a number above 0 with up to 12 digits either side of the point",
    pattern: of(`${notZero}(${number}|${fraction})`),
    above: 0,
    to: 1e12,
  },
  number: {
    expected: "a number with up to 12 digits either side of the point",
    pattern: of(`-?(${number}|${fraction})`),
    from: -1e12,
    to: 1e12,
  },
  length: { expected: 'a length such as "118 mm" or "4.65 in"', pattern: of(`\\s*(${number}|${fraction})${unit}`) },
  size: { expected: 'a length above 0 such as "118 mm"', pattern: of(`${notZero}\\s*(${number}|${fraction})${unit}`) },
  ratio: {
    expected: 'a ratio as printed, such as "2.74" or "52/19"',
    pattern: of(String.raw`${notZero}\d{1,9}(\.\d{1,6})?(\s?:\s?1)?|[1-9]\d{0,8}/[1-9]\d{0,8}`),
  },
};
