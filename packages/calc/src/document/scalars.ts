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
}

const number = String.raw`\d{1,12}(\.\d{1,12})?`;
const fraction = String.raw`\d{1,12}/[1-9]\d{0,11}`;
const unit = " ?(mm|cm|m|in|ft)";
const notZero = "(?=[^1-9]*[1-9])";
const of = (source: string): RegExp => new RegExp(`^(${source})$`);

export const scalars: Readonly<Record<string, Scalar>> = {
  id: { expected: "an id of small letters, digits and hyphens, a letter first", pattern: of("[a-z][a-z0-9-]{0,99}") },
  text: { expected: `text of up to ${longestText} characters` },
  date: { expected: "a date such as 2026-10-03", pattern: of(String.raw`\d{4}-[01]\d-[0-3]\d`) },
  format: { expected: '"meshwright-build/1"', pattern: of(String.raw`meshwright-build/1(\.0)?`) },
  count: {
    expected: "a whole number from 1 to 1000000",
    pattern: of("[1-9][0-9]{0,5}|1000000"),
    from: 1,
    to: 1e6,
    whole: true,
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
  positive: { expected: "a number above 0", pattern: of(`${notZero}(${number}|${fraction})`), above: 0, to: 1e12 },
  number: { expected: "a number", pattern: of(`-?(${number}|${fraction})`), from: -1e12, to: 1e12 },
  length: { expected: 'a length such as "118 mm" or "4.65 in"', pattern: of(`(${number}|${fraction})${unit}`) },
  size: { expected: 'a length above 0 such as "118 mm"', pattern: of(`${notZero}(${number}|${fraction})${unit}`) },
  ratio: {
    expected: 'a ratio as printed, such as "2.74" or "52/19"',
    pattern: of(String.raw`${notZero}\d{1,9}(\.\d{1,6})?( ?: ?1)?|[1-9]\d{0,8}/[1-9]\d{0,8}`),
  },
};
