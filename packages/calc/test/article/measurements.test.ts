import { describe, expect, it } from "vitest";
import { isUnsaid, sayMeasurements, speakerOf, type SaidMeasurements } from "../../src/article/index.js";
import { evaluate } from "../../src/evaluate/index.js";
import { wordsFor } from "../../src/languages/all.js";
import { figures } from "../../src/report/index.js";
import { document, pair, read } from "../make.js";

const first = { ...pair("first", 10, 40), label: "First" };
const said = (measurements: readonly object[], stages: object[] = [], of?: string, locale = "en"): SaidMeasurements => {
  const { figures: words, reports } = wordsFor(locale);
  const ring = { ...pair("ring", 12, 35), label: "Ring", drivenLabel: "ring gear" };
  const rear = { label: "Rear", axle: "differential", stages: [ring, ...stages] };
  const evaluation = evaluate(read(document([first], { rear, front: [] }, { measurements })));
  const answer = sayMeasurements(speakerOf({ evaluation, locale, words, reports, figures }), { of });
  if (isUnsaid(answer)) throw new Error(answer.findings[0]!.message);
  return answer;
};
const lines = ({ rows }: SaidMeasurements): string[] => rows.map(({ head, texts }) => [head, ...texts].join(" | "));

// 4 · 35 / 12 = 11.6667: 35 turns in are 3 out.
const counted = { what: "rear", motorTurns: 35, wheelTurns: { from: "2.99", to: "3.01" } };

describe("measurements against the build", () => {
  it("agree, disagree by how much at least, or cannot tell", () => {
    // 35/3.01 = 11.628 to 35/2.99 = 11.706. 35/3.2 = 10.938 to 35/3.1 = 11.290: 11.290/11.667 is 3.226 % less.
    // Held, three turns of the free wheel are one and a half: 70/3 = 23.333, twice as much.
    const answer = said([
      counted,
      { ...counted, wheelTurns: { from: "3.1", to: "3.2" } },
      { ...counted, wheelTurns: "3", oneWheelHeld: true },
      { ...counted, motorTurns: 70, wheelTurns: "12", oneWheelHeld: true },
    ]);
    expect(lines(answer)).toEqual([
      "Rear | 35 in, 2.99 to 3.01 out | 11.62 to 11.71 | 11.67 | agrees",
      "Rear | 35 in, 3.1 to 3.2 out | 10.93 to 11.30 | 11.67 | disagrees: measured at least 3.23% less",
      "Rear | 35 in, 3 out, one wheel held | 23.33 | 11.67 | disagrees: measured at least 100.00% more",
      "Rear | 70 in, 12 out, one wheel held | 11.67 | 11.67 | agrees",
    ]);
  });

  it("against an interval: a printed hub of 1.5 may still be outside of what was counted", () => {
    // 11.667 · 1.45 to 1.55 = 16.917 to 18.083; 35/2.01 = 17.41 to 35/1.99 = 17.59 lies within.
    const hub = { id: "hub", kind: "published", value: "1.5" };
    const narrow = said([{ ...counted, wheelTurns: { from: "1.99", to: "2.01" } }], [hub]);
    expect(lines(narrow)[0]).toMatch(/\| 16\.91 to 18\.09 \| cannot tell$/);
    const wide = said([{ ...counted, wheelTurns: { from: "1.9", to: "2.1" } }], [hub]);
    expect(lines(wide)[0]).toMatch(/\| agrees$/);
  });

  it("name the counts that they were made with, and are compared with those", () => {
    // With 42 teeth: 4 · 42 / 12 = 14; 42 in are 3 out.
    const answer = said([
      { ...counted, motorTurns: 42, with: { "ring.driven": 42 }, date: "2026-10-04", note: "Cold." },
    ]);
    expect(lines(answer)).toEqual(["Rear | 42 in, 2.99 to 3.01 out | 13.95 to 14.05 | 14.00 | agrees"]);
    expect(answer.rows[0]!.about).toMatch(/^Oct 4, 2026\. Measured with .*ring gear.*: 42\. Cold\.$/);
  });

  it("of one axle only, of none, of one that there is not, in another language", () => {
    expect(said([counted], [], "front").notes).toEqual(["Nothing was measured."]);
    expect(() => said([], [], "raer")).toThrow(/rear/);
    expect(lines(said([counted], [], "rear", "de"))[0]).toBe(
      "Rear | 35 hinein, 2,99 bis 3,01 heraus | 11,62 bis 11,71 | 11,67 | stimmt überein",
    );
  });
});
