import { increments, longestText } from "./scalars.js";

/** What is expected of each plain value of a document, in words: for the Schema and the guide. */
export const scalarTexts: Readonly<Record<string, string>> = {
  id: "an id of small letters, digits and single hyphens, a letter first",
  text: `text of up to ${longestText} characters`,
  date: "a day of the calendar such as 2026-10-03",
  format: '"meshwright-build/1"',
  count: "a whole number from 1 to 1000000",
  sets: "a whole number from 1 to 100",
  significant: "a whole number from 1 to 21",
  increment: `one of ${increments.join(", ")}`,
  digits: "a whole number from 0 to 100",
  whole: "a whole number from 0",
  amount: 'an amount such as "4.20"',
  currency: "a currency's three letters, such as EUR",
  positive: "a number above 0 with up to 12 digits either side of the point",
  number: "a number with up to 12 digits either side of the point",
  length: 'a length such as "118 mm" or "4.65 in"',
  size: 'a length above 0 such as "118 mm"',
  ratio: 'a ratio as printed, such as "2.74" or "52/19"',
};
