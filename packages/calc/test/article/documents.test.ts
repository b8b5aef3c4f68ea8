import { describe, expect, it } from "vitest";
import { articleFrom, elementsIn, htmlOf, type MadeElement } from "./documents.js";
import { expectedIn, treeOf } from "./expected.js";
import { holderOf, holdersOf, localeOf } from "../../src/article/index.js";

const seeds = Array.from({ length: 200 }, (_, n) => n + 1);

/** The elements around one, itself first. */
const around = (element: MadeElement): MadeElement[] => {
  const list: MadeElement[] = [];
  for (let at: MadeElement | undefined = element; at; at = at.parent) list.push(at);
  return list;
};

/** By the rule as it is told, one ancestor at a time, over all that stands in it. */
function holderByHand(root: MadeElement, element: MadeElement): MadeElement | undefined {
  const all = [...elementsIn(root)];
  const { build } = element.attributes;
  for (const place of around(element)) {
    const inside = [...elementsIn(place)].filter(
      ({ name, attributes }) => name === "mw-build" && (!build || attributes.id === build),
    );
    if (!inside.length) continue;
    const before = inside.filter((one) => all.indexOf(one) < all.indexOf(element));
    return before.length ? before[before.length - 1] : inside[0];
  }
  return undefined;
}

function localeByHand(element: MadeElement): string {
  const tag = around(element)
    .map(({ attributes }) => attributes.lang)
    .find((lang) => lang !== undefined && lang !== "");
  return tag === undefined || tag === "no tag" ? "en" : tag.replace("_", "-");
}

describe("articles at random", () => {
  it("give every element the build and the language that the rules give it", () => {
    let looked = 0;
    for (const seed of seeds) {
      const root = articleFrom(seed);
      const tree = treeOf(root);
      const all = [...elementsIn(root)];
      const holders = holdersOf(tree, all.filter(({ name }) => name === "mw-build").reverse());
      for (const element of all.filter(({ attributes }) => attributes["data-n"])) {
        looked++;
        expect(holderOf(tree, holders, element, element.attributes.build), `${seed} ${htmlOf(element)}`).toBe(
          holderByHand(root, element),
        );
        expect(localeOf(tree, element)).toBe(localeByHand(element));
      }
    }
    expect(looked).toBeGreaterThan(1000);
  });

  it("say something or leave the author's text, and never a word of another language's beside", () => {
    const said = new Map<string, number>();
    for (const seed of seeds)
      for (const { name, locale, texts } of expectedIn(articleFrom(seed))) {
        const key = `${name} ${texts ? "says" : "is silent"}`;
        said.set(key, (said.get(key) ?? 0) + 1);
        for (const text of texts ?? []) {
          expect(text).not.toMatch(/\{\d\}|undefined|NaN/);
          if (locale.startsWith("de") && name !== "mw-value")
            expect(text).not.toMatch(/\b(ahead|behind|not known|drives)\b/);
        }
      }
    // Both happen, for every element.
    expect([...said.keys()].sort()).toEqual(
      ["gauge", "summary", "teeth", "value", "speed", "working"]
        .map(
          (name) =>
            ({ gauge: "mw-overdrive-gauge", summary: "mw-ratio-summary", speed: "mw-wheel-speed" })[name] ??
            `mw-${name}`,
        )
        .flatMap((name) => [`${name} is silent`, `${name} says`])
        .sort(),
    );
  });

  it("say the reductions that their counts come to", () => {
    let compared = 0;
    for (let seed = 1; seed <= 600; seed++) {
      const root = articleFrom(seed);
      const expected = new Map(expectedIn(root).map((one) => [one.n, one]));
      for (const element of elementsIn(root)) {
        const { figure = "reduction", of, at, digits, "data-n": n } = element.attributes;
        if (element.name !== "mw-value" || figure !== "reduction" || of !== "first" || at || digits) continue;
        const { locale, texts } = expected.get(n!)!;
        const holder = holderByHand(root, element);
        const [script] = holder?.children ?? [];
        if (!holder || !texts) continue;
        const data = typeof script === "object" ? (JSON.parse(script.children[0] as string) as Made) : undefined;
        const written = /^First: (\d+) to (\d+)/.exec(holder.attributes.stages ?? "");
        const [driver, driven] = data
          ? [data.stages[0]!.driver, data.stages[0]!.driven]
          : [+written![1]!, +written![2]!];
        const { maximumFractionDigits = 2, roundingMode } = data?.rounding ?? {};
        const options = { minimumFractionDigits: maximumFractionDigits, maximumFractionDigits, roundingMode };
        // Node's own rounding, of so short a fraction in a double: it is not near a tie.
        const text = new Intl.NumberFormat(locale, options as Intl.NumberFormatOptions).format(driven / driver);
        expect(texts[0]!.startsWith(text), `${seed} ${texts[0]} ${text}`).toBe(true);
        compared++;
      }
    }
    expect(compared).toBeGreaterThan(5);
  });
});

interface Made {
  readonly stages: readonly { readonly driver: number; readonly driven: number }[];
  readonly rounding?: { readonly maximumFractionDigits: number; readonly roundingMode: string };
}
