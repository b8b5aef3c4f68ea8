/** Text with no more than this many characters. */
export const longestText = 5000;

/** How an address is written. */
export const addressPattern = /^[a-z][A-Za-z0-9-]{0,99}(\.[A-Za-z0-9-]{1,99}){0,2}$/;

/** The plain values of a document: the pattern that its text must match, and the numbers that it takes. */
export interface Scalar {
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
/** Above zero: neither the 7 of "0/7" nor the 1 of "0:1" makes it so. */
const notZero = "(?=[^1-9:/]*[1-9])";
const of = (source: string): RegExp => new RegExp(`^(${source})$`);

const long = "0[13578]|1[02]";
const leap = "[0-9]{2}(0[48]|[2468][048]|[13579][26])|([02468][048]|[13579][26])00";
/** The days of the Gregorian calendar. */
const day = [
  `[0-9]{4}-((${long})-(0[1-9]|[12][0-9]|3[01])|(0[469]|11)-(0[1-9]|[12][0-9]|30)|02-(0[1-9]|1[0-9]|2[0-8]))`,
  `(${leap})-02-29`,
].join("|");

/** ECMA-402, SetNumberFormatDigitOptions. */
export const increments = [1, 2, 5, 10, 20, 25, 50, 100, 200, 250, 500, 1000, 2000, 2500, 5000];

/** What a value of each kind has to look like, by the letters of a shape. */
export const scalars: Readonly<Record<string, Scalar>> = {
  id: {
    pattern: of("(?!.*--)[a-z][a-z0-9-]{0,99}"),
  },
  text: {},
  date: { pattern: of(day) },
  format: { pattern: of(String.raw`meshwright-build/1(\.0)?`) },
  count: {
    pattern: of("[1-9][0-9]{0,5}|1000000"),
    from: 1,
    to: 1e6,
    whole: true,
  },
  sets: { pattern: of("[1-9][0-9]?|100"), from: 1, to: 100, whole: true },
  significant: {
    pattern: of("[1-9]|1[0-9]|2[01]"),
    from: 1,
    to: 21,
    whole: true,
  },
  increment: {
    pattern: of(increments.join("|")),
    from: 1,
    to: 5000,
    whole: true,
    among: increments,
  },
  digits: { pattern: of("[1-9]?[0-9]|100"), from: 0, to: 100, whole: true },
  whole: { pattern: of("[0-9]{1,6}"), from: 0, to: 1e6, whole: true },
  amount: {
    pattern: of(number),
    from: 0,
    to: 1e12,
  },
  currency: { pattern: of("[A-Z]{3}") },
  positive: {
    pattern: of(`${notZero}(${number}|${fraction})`),
    above: 0,
    to: 1e12,
  },
  number: {
    pattern: of(`-?(${number}|${fraction})`),
    from: -1e12,
    to: 1e12,
  },
  length: { pattern: of(`\\s*(${number}|${fraction})${unit}`) },
  size: { pattern: of(`${notZero}\\s*(${number}|${fraction})${unit}`) },
  ratio: {
    pattern: of(String.raw`${notZero}\d{1,9}(\.\d{1,6})?(\s?:\s?1)?|[1-9]\d{0,8}/[1-9]\d{0,8}`),
  },
};
