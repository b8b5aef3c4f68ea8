import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import {
  sayCard,
  sayDriveLine,
  sayMeasurements,
  sayOrder,
  sayParts,
  speakerOf,
  type Reporter,
} from "../../src/article/index.js";
import { applyChanges, parseBuild } from "../../src/document/index.js";
import { evaluate } from "../../src/evaluate/index.js";
import { wordsFor } from "../../src/languages/all.js";
import { figures } from "../../src/report/index.js";

const limpet = parseBuild(readFileSync(new URL("../../../../seeds/limpet.json", import.meta.url), "utf8"));
// What there is to buy, with the day at which its price was checked.
const changed = applyChanges(limpet, { "primary.driver": 17 }).build!;

const reporter = (locale: string, build = changed): Reporter => {
  const { figures: words, reports } = wordsFor(locale);
  return speakerOf({ evaluation: evaluate(build), locale, words, reports, figures });
};

/** The days of the build as a person who writes that language writes them: its revision's, a measurement's, a price's. */
const days: Readonly<Record<string, readonly [revision: string, measured: string, price: string]>> = {
  en: ["October 3, 2026", "Oct 4, 2026", "Sep 28, 2026"],
  "en-GB": ["3 October 2026", "4 Oct 2026", "28 Sept 2026"],
  de: ["3. Oktober 2026", "04.10.2026", "28.09.2026"],
  fr: ["3 octobre 2026", "4 oct. 2026", "28 sept. 2026"],
  es: ["3 de octubre de 2026", "4 oct 2026", "28 sept 2026"],
  ja: ["2026年10月3日", "2026/10/04", "2026/09/28"],
  // Set apart, and its parts in order from the right.
  ar: ["\u20683 أكتوبر 2026\u2069", "\u206804\u200f/10\u200f/2026\u2069", "\u206828\u200f/09\u200f/2026\u2069"],
};

describe.each(Object.entries(days))("days are written as in %s", (locale, [revision, measured, price]) => {
  test("on a card, below a line of drive, with measurements, parts and what to buy, and never as data", () => {
    const speaker = reporter(locale);
    const said = {
      card: sayCard(speaker),
      line: sayDriveLine(speaker).origin,
      measurements: sayMeasurements(speaker, {}),
      parts: sayParts(speaker),
      order: sayOrder(speaker, reporter(locale, limpet)).buy.map(({ checked }) => checked),
    };
    const text = (one: unknown): string => JSON.stringify(one, (_, value: unknown) => (value instanceof Map ? [...value] : value)); // prettier-ignore
    expect(text(said.card)).toContain(revision);
    expect(said.line).toContain(revision);
    expect(text(said.measurements)).toContain(measured);
    expect(text(said.parts.tables)).toContain(price);
    expect(text(said.order)).toContain(price);
    const texts = [said.card.published, said.line, ...said.order];
    for (const one of [...texts, text(said.measurements), text(said.parts.rows.map(({ texts: row }) => row))])
      expect(one).not.toMatch(/2026-\d\d/);
  });
});
