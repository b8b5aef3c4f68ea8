import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { elementAttributes, isPagesOwn } from "@meshwright/calc/document";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { axleAttributeOf, axleNames, axleParts, buildWords } from "../../packages/calc/src/document/notation-names.js";
import { run } from "../../packages/figures/src/command.js";
import { asked } from "./queries.js";
import { axles, modes, pairs, sample, stages, versions } from "./sample.js";
import { lettersOf, nearWords, slipsOf } from "./slips.js";

/** A line of an article: what is written, and the nearest words to be told of it. */
interface Line {
  readonly html: string;
  readonly near: readonly string[];
}

const json = `<mw-build id="limpet"><script type="application/json">${JSON.stringify(sample)}</script></mw-build>`;
const tagOf = (tag: string, attributes: Readonly<Record<string, unknown>>): string =>
  `<${tag}${Object.entries(attributes)
    .map(([name, value]) => ` ${name}="${String(value)}"`)
    .join("")}>9.87</${tag}>`;

/** A word with every slip, each in an element of its own; those that are words themselves are none. */
const linesOf = (word: string, words: readonly string[], html: (slip: string) => string): readonly Line[] =>
  slipsOf(word, lettersOf(words))
    .filter((slip) => !words.includes(slip))
    .map((slip) => ({ html: html(slip), near: nearWords(slip, words) }));

/** The same of a name: letters are small in HTML, whatever they are typed as. */
const namesOf = (word: string, words: readonly string[], html: (slip: string) => string): readonly Line[] =>
  slipsOf(word, lettersOf(words))
    .filter((slip) => slip === slip.toLowerCase() && !words.includes(slip))
    .filter((slip) => !isPagesOwn(slip) || slip.startsWith("on"))
    .map((slip) => ({ html: html(slip), near: nearWords(slip, words) }));

let folder = "";
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "words-"));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

interface Told {
  readonly line: number;
  readonly outcome: string;
  readonly message: string;
}

/** Has the command mend an article of one element a line: it tells each, and leaves the text. */
function tryAll(lines: readonly Line[], before = json): void {
  expect(lines.length).toBeGreaterThan(20);
  const file = join(folder, "article.html");
  const text = `${before}\n${lines.map(({ html }) => html).join("\n")}\n`;
  writeFileSync(file, text);
  const said: string[] = [];
  const exit = run(["--write", "--json", file], (line) => said.push(line));
  expect(readFileSync(file, "utf8")).toBe(text);
  expect(exit).toBe(2);
  const { files } = JSON.parse(said.join("\n")) as { files: readonly { places: readonly Told[] }[] };
  const told = new Map<number, string>();
  for (const { line, outcome, message } of files[0]!.places)
    told.set(line - 1, `${told.get(line - 1) ?? ""}[${outcome}] ${message} `);
  const wrong = lines.flatMap(({ html, near }, n) => {
    const message = told.get(n + 1) ?? "nothing";
    return message.startsWith("[untold] ") &&
      message.includes(near.join(", ")) &&
      !/\[(mendable|mended|left)\]/.test(message)
      ? []
      : [`${html}\n  ${message}; nearest: ${near.join(", ")}`];
  });
  expect(wrong.slice(0, 10).join("\n")).toBe("");
}

describe("the command", () => {
  it("tells every word of a query that is none", () => {
    tryAll(
      asked().flatMap(({ field, word, words, query }) =>
        linesOf(word, words, (slip) => tagOf("mw-value", { ...query, [field]: slip })),
      ),
    );
  });

  it.each(Object.keys(elementAttributes).filter((tag) => tag !== "mw-build"))("tells every name in %s", (tag) => {
    const words = [...elementAttributes[tag as "mw-value"], "build"];
    tryAll(words.flatMap((word) => namesOf(word, words, (slip) => tagOf(tag, { [slip]: "rear" }))));
  });

  it("tells every name of a notation", () => {
    const words = [
      ...[...elementAttributes["mw-build"], "build", ...buildWords],
      ...axleNames.flatMap((axle) => [axle, ...axleParts.map((part) => `${axle}-${part}`)]),
    ];
    const html = (slip: string) =>
      `<mw-build stages="Spur and pinion: 15 to 62" rear="Ring: 12 to 35" ${slip}="9"><mw-value>9.87</mw-value></mw-build>`;
    tryAll(
      words.flatMap((word) => namesOf(word, words, html)),
      "<p></p>",
    );
  });

  it("tells every slip in the name of an axle of its own, but for another name", () => {
    const words = ["axle-third", "axle-third-wheel", "axle-third-motor"];
    const others = ["axle-second", ...buildWords, ...axleNames];
    // What stands behind "axle-" is the author's: an axle of another name is told where nothing but a wheel speaks of it, or
    // where the size of a wheel stands for its stages.
    const html = (slip: string) =>
      `<mw-build stages="Spur: 15 to 62" axle-third="Ring: 12 to 35" ${slip}="120 mm"><mw-value>9.87</mw-value></mw-build>`;
    const slips = words
      .slice(1)
      .flatMap((word) => slipsOf(word, lettersOf(words)))
      .filter((slip) => slip === slip.toLowerCase() && !words.includes(slip) && !/[^a-z0-9-]/.test(slip))
      .filter((slip) => !isPagesOwn(slip));
    tryAll(
      slips.map((slip) => ({
        html: html(slip),
        near: axleAttributeOf(slip)?.part || !axleAttributeOf(slip) ? nearWords(slip, [...words, ...others]) : [slip],
      })),
      "<p></p>",
    );
  });

  it("tells every key of a build that is none", () => {
    const keys = new Set<string>();
    JSON.stringify(sample, (key, value: unknown) => {
      if (key && !/^\d+$/.test(key) && !key.includes(".")) keys.add(key);
      return value;
    });
    const text = JSON.stringify(sample);
    // What is wrong in another version of a build keeps no figure of this one from being told.
    const versionOf: Readonly<Record<string, string>> = { changes: "deeper", back: "revision-1", set: "revision-1" };
    const lines = [...keys].flatMap((key) => {
      const at = versionOf[key] ?? "article";
      return slipsOf(key, ["a"])
        .filter((slip) => !keys.has(slip))
        .map((slip) => text.replace(`"${key}":`, `"${slip}":`))
        .map((one) => ({
          html: `<mw-build><script type="application/json">${one}</script><mw-value at="${at}">9.87</mw-value></mw-build>`,
          near: [key],
        }));
    });
    tryAll(lines, "<p></p>");
  });

  it("tells every mode", () => {
    const script = json.slice(json.indexOf(">") + 1);
    tryAll(
      modes.flatMap((word) => linesOf(word, modes, (slip) => `<mw-build mode="${slip}">${script}`)),
      "<p></p>",
    );
  });

  const words: readonly (readonly [tag: string, field: string, words: readonly string[]])[] = [
    ...["mw-value", "mw-ratio-summary", "mw-working", "mw-order-list", "mw-parts-list", "mw-bench-card"].map(
      (tag) => [tag, "at", versions] as const,
    ),
    ["mw-order-list", "from", versions],
    ...["mw-ratio-summary", "mw-working", "mw-wheel-speed", "mw-overdrive-gauge"].map(
      (tag) => [tag, "of", axles] as const,
    ),
    ["mw-train-drawing", "of", stages],
    ["mw-pair-finder", "of", pairs],
    ["mw-change-table", "show", ["deeper"]],
    ["mw-change-table", "against", versions],
    ["mw-count-finder", "of", ["primary.driver", "primary.driven", "front.wheel"]],
    ["mw-count-finder", "figure", ["reduction", "travel", "speed", "lead"]],
    ["mw-count-finder", "output", axles],
    ["mw-count-finder", "with", axles],
    ["mw-train-finder", "of", pairs],
    ["mw-train-finder", "wheels", axles],
    ["mw-measurements", "of", axles],
    ...["mw-measurements", "mw-drive-line", "mw-train-drawing"].map((tag) => [tag, "at", versions] as const),
    ["mw-quantity", "of", ["front.wheel.diameter", "motor.kv", "target"]],
    ["mw-turn-count", "of", [...stages, ...axles]],
    ["mw-wheel-speed", "unit", ["km/h", "m/s", "mph", "ft/s"]],
    ["mw-overdrive-gauge", "scope", ["tyres", "gears"]],
    ["mw-overdrive-gauge", "base", [...axles, "mean"]],
    ...["mw-value", "mw-working", "mw-teeth"].map((tag) => [tag, "build", ["limpet"]] as const),
  ];
  it.each(words)("tells every word in %s %s", (tag, field, known) => {
    tryAll(
      known
        .flatMap((word) =>
          linesOf(word, known, (slip) =>
            tagOf(tag, { ...(tag === "mw-teeth" && { of: "primary.driver" }), [field]: slip }),
          ),
        )
        .filter(({ html }) => !/="\s*"/.test(html)),
    );
  });
});
