import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { applyChanges, readBuild } from "@meshwright/calc/document";
import { stagesOf, valueAt, type Build } from "@meshwright/calc/drivetrain";
import { evaluate, type Evaluation } from "@meshwright/calc/evaluate";
import { needsOf, readParts } from "@meshwright/calc/parts";
import { figureOf, type QueryText } from "@meshwright/calc/report";
import { attributesOf, elementsIn, elementsOf, sourceOf, textOf, type Element } from "./page.js";

const html = sourceOf("index.html");
const elements = elementsIn(html);
const all = (...tags: string[]): Element[] => elements.filter((element) => tags.includes(element.tagName));
const article = all("article")[0]!;

const data: unknown = JSON.parse(
  textOf(all("script").find((script) => attributesOf(script).type === "application/json")!),
);
const reading = readBuild(data);
const build = reading.build!;

/** The build as published, or one of its alternatives. */
function version(id: string): Evaluation {
  if (id === "article") return evaluate(build);
  const alternative = build.alternatives?.find((one) => one.id === id);
  return evaluate(applyChanges(build, alternative!.changes).build as Build);
}

const figure = (query: QueryText, at = "article"): string => figureOf(version(at), query, { version });

describe("the build in the article", () => {
  test("is the starter build", () => {
    expect(data).toEqual(JSON.parse(readFileSync(new URL("../../seeds/limpet.json", import.meta.url), "utf8")));
  });

  test("has nothing wrong with it, in any of its versions", () => {
    expect(reading.findings).toEqual([]);
    for (const { id, changes } of build.alternatives ?? []) {
      expect([id, applyChanges(build, changes).findings]).toEqual([id, []]);
    }
  });
});

describe("without scripts, the article is right to the last digit", () => {
  test.each(all("mw-value").map((element) => [textOf(element), attributesOf(element)] as const))(
    "%s is %o",
    (text, attributes) => {
      const { at, ...query } = { figure: "reduction", ...attributes } as QueryText & { at?: string };
      expect(text).toBe(figure(query, at));
    },
  );

  test.each(all("mw-teeth").map((element) => [textOf(element), attributesOf(element).of!] as const))(
    "%s is %s",
    (text, of) => {
      const value = valueAt(build, of);
      expect(text).toBe(typeof value === "number" ? String(value) : figure({ figure: "counts", of }));
    },
  );

  test("both totals stand in the source", () => {
    for (const of of ["front", "rear"]) expect(html).toContain(`>${figure({ figure: "reduction", of })}<`);
    expect([figure({ figure: "reduction", of: "front" }), figure({ figure: "reduction", of: "rear" })]).toEqual([
      "44.30",
      "43.32",
    ]);
  });

  const rowsOf = (tag: string): string[][] =>
    elementsOf(all(tag)[0]!)
      .filter((element) => element.tagName === "tr")
      .map((row) =>
        elementsOf(row)
          .filter((cell) => cell.tagName === "th" || cell.tagName === "td")
          .map((cell) => textOf(cell)),
      );

  test("the table of stages", () => {
    const outputs = evaluate(build).outputs;
    const pairs = outputs[0]!.steps.map(({ stage }, n) => [
      stage.label,
      ...outputs.map((output) => figure({ figure: "reduction", of: output.steps[n]!.stage.id })),
    ]);
    const subtotal = (label: string, group: string): string[] => [
      label,
      ...outputs.map(({ id }) => figure({ figure: "reduction", of: id, group })),
    ];
    const total = [
      "Motor turns for one wheel turn",
      ...outputs.map(({ id }) => figure({ figure: "reduction", of: id })),
    ];
    expect(rowsOf("mw-ratio-summary")).toEqual([
      ["Stage", ...outputs.map(({ label }) => label)],
      ...pairs.slice(0, 2),
      subtotal("Gearbox", "gearbox"),
      ...pairs.slice(2),
      subtotal("Axle", "axle"),
      total,
    ]);
  });

  test("the list of counts", () => {
    const own = new Map(
      build.outputs.flatMap(({ label, stages }) => stages.map(({ id }) => [id, `${label}: `] as const)),
    );
    expect(rowsOf("mw-stage-editor")).toEqual([
      ["Stage", "Teeth"],
      ...[...stagesOf(build)].map(({ stage }) => [
        `${own.get(stage.id) ?? ""}${stage.label}`,
        figure({ figure: "counts", of: stage.id, measure: "arrow" }),
      ]),
    ]);
  });

  test("the versions side by side", () => {
    const versions = ["article", "first-try", "deeper-rear"];
    const row = (head: string, query: QueryText): string[] => [head, ...versions.map((at) => figure(query, at))];
    const labels = versions.slice(1).map((at) => build.alternatives!.find(({ id }) => id === at)!.label!);
    expect(rowsOf("mw-change-table")).toEqual([
      ["Motor turns for one wheel turn", "As published", ...labels],
      row("Front", { figure: "reduction", of: "front" }),
      row("Rear", { figure: "reduction", of: "rear" }),
      row("Front against rear", { figure: "lead" }),
      row("Ideal speed at full charge, front", { figure: "speed", of: "front" }),
    ]);
  });

  test("the speeds", () => {
    const row = (head: string, measure: string): string[] => [
      `${head}, ${figure({ figure: "volts", measure })}`,
      ...build.outputs.map(({ id: of }) => figure({ figure: "speed", of, measure })),
    ];
    expect(rowsOf("mw-wheel-speed")).toEqual([
      ["Ideal ground speed", "Front", "Rear"],
      row("Nominal", "nominal"),
      row("Full charge", "full"),
    ]);
  });

  test("the working", () => {
    const lines = elementsOf(all("mw-working")[0]!).filter(({ tagName }) => tagName === "li");
    expect(lines.map((line) => textOf(line))).toEqual(
      evaluate(build).outputs.map(({ id: of, label, steps }) => {
        const factors = steps.map(({ stage }) => {
          const counts = figure({ figure: "counts", of: stage.id }).split(" driving ");
          return `${counts.at(-1)}/${counts[0]}`;
        });
        return `${label}: ${factors.join(" × ")} = ${figure({ figure: "fraction", of })} = ${figure({ figure: "reduction", of })}`;
      }),
    );
  });

  const parts = readParts(build.parts).parts!;

  test("the parts", () => {
    const fitted = needsOf(build, parts).flatMap(({ part, pieces }) =>
      part ? [[part.name, part.maker, String(pieces)]] : [],
    );
    expect(rowsOf("mw-parts-list")).toEqual([["Part", "Maker", "Pieces"], ...fitted]);
  });

  test("the card for the workshop", () => {
    // Gear row, ring and hub, from the spur on; with one wheel held the other counts half.
    const front = ((45 / 18) * 38 * 22) / (13 * 15);
    const rear = ((45 / 18) * 35 * 23) / (12 * 16);
    expect(rowsOf("mw-bench-card")).toEqual([
      ["To check by hand", "Should be"],
      ["Spur and pinion, between centres", figure({ figure: "centre", of: "primary" })],
      ["Turns of the spur, both front wheels twice round", (2 * front).toFixed(2)],
      ["The same, one front wheel held, the other three times", (1.5 * front).toFixed(2)],
      ["Turns of the spur, both rear wheels twice round", (2 * rear).toFixed(2)],
    ]);
  });

  test("of the shelf's twenty-five pairs, 15 to 62 alone fits and reaches the range", () => {
    const shelf = (is: string): number[] =>
      parts.flatMap((part) => (part.is === is && part.module !== undefined ? (part.teeth ?? []) : []));
    const pairs = shelf("pinion").flatMap((driver) => shelf("spur").map((driven) => [driver, driven] as const));
    const good = pairs.filter(([driver, driven]) => {
      const changed = evaluate(applyChanges(build, { "primary.driver": driver, "primary.driven": driven }).build!);
      const says = (query: QueryText): string => figureOf(changed, query);
      return (
        says({ figure: "fit", of: "primary" }) === "fits" &&
        build.outputs.every(({ id: of }) => says({ figure: "standing", of }) === "inside")
      );
    });
    expect(pairs).toHaveLength(25);
    expect(good).toEqual([[15, 62]]);
    const [counts, centre] = ["counts", "centre"].map((name) => figure({ figure: name, of: "primary" }));
    expect(textOf(all("mw-pair-finder")[0]!)).toBe(
      `Of the shelf’s ${pairs.length} pairs one fits the slot and reaches ${figure({ figure: "range" })}: ${counts}, at ${centre}.`,
    );
  });

  test("the sentence that stands for the drawing", () => {
    const [from, to] = ["from", "to"].map((measure) => figure({ figure: "slot", of: "primary", measure }));
    const [counts, centre] = ["counts", "centre"].map((name) => figure({ figure: name, of: "primary" }));
    expect(textOf(all("mw-train-drawing")[0]!)).toBe(
      `${counts} teeth, module ${String(valueAt(build, "primary.module"))}: ${centre} between centres, in a slot from ${from} to ${to}.`,
    );
  });

  test("the sentences that stand for the line of drive", () => {
    const counts = (of: string): string => figure({ figure: "counts", of });
    const axle = (of: string): string =>
      `${counts(`${of}-ring`)}, ${counts(`${of}-hub`)}, in all ${figure({ figure: "reduction", of })}.`;
    expect(textOf(all("mw-drive-line")[0]!)).toBe(
      `From the motor: ${counts("primary")}, then ${counts("row")}. Front: ${axle("front")} Rear: ${axle("rear")}`,
    );
  });

  test("the sentence that stands for the picture of the ground", () => {
    const drift = figure({ figure: "drift", over: "10 m" });
    const gap = figure({ figure: "gap" });
    expect(textOf(all("mw-overdrive-gauge")[0]!)).toBe(
      `For the same turns of the shaft, tyres included, the front rolls ${drift} farther than the rear in 10\u00a0m: ${gap}, measured against the rear.`,
    );
  });

  test("a number in the prose that no element holds is one of the story's givens", () => {
    const shelf = [13, 15, 17, 20, 23, 53, 56, 62, 66, 70];
    const [mount] = build.mounts!;
    const lengths = [mount!.closer, mount!.farther].map((length) => length!.replace(" mm", ""));
    const printed = (
      build.alternatives!.find(({ id }) => id === "as-printed")!.changes["front-hub"] as { value: string }
    ).value;
    const hub = ["article", "hub-23"].map((at) => figure({ figure: "count", of: "front-hub.driven" }, at));
    const marks = [String(valueAt(build, "primary.module")), "20", "32"];
    const givens = new Set([...shelf.map(String), ...lengths, printed, ...hub, ...marks]);
    const bare = (element: Element): boolean =>
      element.tagName.startsWith("mw-") || /^(svg|header|table)$/.test(element.tagName);
    const numbers = textOf(article, bare).match(/\d+(?:\.\d+)?/g)!;
    expect(numbers.filter((number) => !givens.has(number))).toEqual([]);
  });
});

describe("the article", () => {
  const isPlate = (element: Element): boolean =>
    /^(script|svg|table|mw-build|mw-overdrive-gauge|mw-train-drawing|mw-drive-line|mw-pair-finder|mw-order-list)$/.test(
      element.tagName,
    ) || attributesOf(element).class === "sheets";

  test("has 600 to 900 words", () => {
    const words = textOf(article, isPlate).match(/[\p{L}\p{N}][^\s]*/gu)!.length;
    expect(words).toBeGreaterThanOrEqual(600);
    expect(words).toBeLessThanOrEqual(900);
  });

  test("calls its figures what the trade calls them, and which way the axles disagree", () => {
    const text = textOf(article, isPlate);
    for (const word of ["final drive", "rollout"]) expect(text).toContain(word);
    const ahead = version("article").compare()!.difference("tyres")!;
    expect(/\ban (over|under)drive\b/.exec(text)![1]).toBe(ahead.low.sign > 0 ? "over" : "under");
  });

  test("tells of three refusals at the most before the pair that fits", () => {
    const verdicts = all("mw-value").filter((element) => attributesOf(element).figure === "fit");
    const refused = verdicts.filter((element) => textOf(element) !== "fits");
    expect(refused.length).toBeLessThanOrEqual(3);
    expect(verdicts.length).toBeGreaterThan(refused.length);
  });

  test("bears the date of the build", () => {
    expect(attributesOf(all("time")[0]!).datetime).toBe(build.revision!.date);
  });

  test("tells what a dotted underline means before the first one", () => {
    const order = elements.filter(
      ({ tagName, attrs }) => tagName === "mw-teeth" || attrs.some(({ value }) => value === "hint"),
    );
    expect(order[0]!.tagName).toBe("p");
    expect(textOf(order[0]!)).toContain("dotted underline");
    expect(order.slice(1).every(({ tagName }) => tagName === "mw-teeth")).toBe(true);
  });

  test("holds no code and no style of its own, and asks nobody else for anything", () => {
    for (const element of elements) {
      const attributes = attributesOf(element);
      expect(Object.keys(attributes).filter((name) => name === "style" || /^on(?!ly$)/.test(name))).toEqual([]);
      expect(element.tagName).not.toBe("style");
      if (element.tagName === "script" && attributes.type !== "application/json") expect(textOf(element)).toBe("");
      for (const address of [attributes.src, attributes.href]) expect(address ?? "").not.toMatch(/^(\w+:|\/)/);
    }
    expect(all("script").filter((script) => "src" in attributesOf(script))).toHaveLength(1);
    expect(sourceOf("article.css")).not.toMatch(/url\(|@import|@font-face/);
  });

  test("names every pinned version that it speaks of", () => {
    const pinned = all("mw-value").flatMap((element) => [attributesOf(element).at, attributesOf(element).from]);
    const told = new Set(pinned.filter((id) => id && id !== "article"));
    expect(told).toEqual(new Set(build.alternatives!.map(({ id }) => id)));
  });

  test("has one main heading, and no level is skipped", () => {
    const levels = elements.filter(({ tagName }) => /^h[1-6]$/.test(tagName)).map(({ tagName }) => Number(tagName[1]));
    expect(levels[0]).toBe(1);
    expect(levels.filter((level) => level === 1)).toHaveLength(1);
    levels.slice(1).forEach((level, n) => expect(level - levels[n]!).toBeLessThanOrEqual(1));
  });
});
