import { assert } from "@esm-bundle/chai";
import { axleNames, axleParts, buildWords, elementAttributes, isPagesOwn } from "@meshwright/calc/document";
import { drives, scopes, units, vocabulary, type FigureName, type FigureSpec } from "@meshwright/calc/report";
import type { Finding } from "@meshwright/calc/stages";
import "../all.js";
import type { MwBuild } from "../elements/build/index.js";
import { clear, limpet, lineOf } from "./page.js";

// Every word that a page's markup chooses something with, written wrong in every way that a hand slips in: none may choose
// something else, and each has to be told with the words that it is nearest to.

/** Damerau's distance by the book, apart from the library's own: how many slips lie between two words. */
function slipsBetween(one: string, other: string): number {
  const known = new Map<string, number>();
  const least = (m: number, n: number): number => {
    if (!m || !n) return m + n;
    const key = `${m} ${n}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    const isSame = one[m - 1] === other[n - 1];
    const ways = [least(m - 1, n) + 1, least(m, n - 1) + 1, least(m - 1, n - 1) + (isSame ? 0 : 1)];
    if (m > 1 && n > 1 && one[m - 1] === other[n - 2] && one[m - 2] === other[n - 1])
      ways.push(least(m - 2, n - 2) + 1);
    const result = Math.min(...ways);
    known.set(key, result);
    return result;
  };
  return least(one.length, other.length);
}

/** The nearest words of a table to one that is one slip away from one of them: the case of letters apart, three at the most. */
function nearestIn(word: string, table: readonly string[]): string[] {
  const far = table.map((one) => slipsBetween(word.toLowerCase(), one.toLowerCase()));
  const least = Math.min(...far);
  return table.filter((_, n) => far[n] === least).slice(0, 3);
}

const swapped = (word: string, n: number): string => word.slice(0, n) + word[n + 1]! + word[n]! + word.slice(n + 2);

/** Every letter left out, and every two neighbours swapped. */
const slipsOf = (word: string): string[] => [
  ...[...word].map((_, n) => word.slice(0, n) + word.slice(n + 1)),
  ...[...word].slice(1).map((_, n) => swapped(word, n)),
];

/** The same numbers in every run. */
function numbers(seed: number): (below: number) => number {
  let state = seed;
  return (below) => {
    state = (state * 1_103_515_245 + 12_345) % 2_147_483_648;
    return Math.floor((state / 2_147_483_648) * below);
  };
}
const pick = numbers(20_261_125);
const letters = "abcdefghijklmnopqrstuvwxyz";

/** One of each of the other slips: a letter put in, one replaced, one in the wrong case. */
function otherSlips(word: string): string[] {
  const [at, letter] = [pick(word.length), letters[pick(26)]!];
  const cased = word[at]!.toUpperCase() === word[at] ? word[at]!.toLowerCase() : word[at]!.toUpperCase();
  return [
    word.slice(0, at) + letter + word.slice(at),
    word.slice(0, at) + letter + word.slice(at + 1),
    word.slice(0, at) + cased + word.slice(at + 1),
  ];
}

const distinct = (words: readonly string[], table: readonly string[]): string[] =>
  [...new Set(words)].filter((word) => word && !table.includes(word));

/** One element that is written wrong. */
interface Wrong {
  readonly tag: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly at: string;
  readonly nearest: readonly string[];
}

const own = "as the author wrote it, 7";

/** Puts many elements beside one build, and says what was told of each and whether it kept the author's text. */
async function tellOf(wrong: readonly Wrong[]): Promise<string[]> {
  clear();
  const page = document.createElement("div");
  page.innerHTML = `<mw-build id="limpet"><script type="application/json">${limpet}</script></mw-build>`;
  const build = page.firstElementChild as MwBuild;
  const elements = wrong.map(({ tag, attributes }) => {
    const element = document.createElement(tag);
    for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, value);
    element.textContent = own;
    return element;
  });
  page.append(...elements);
  document.body.append(page);
  const told = new Map<Element | undefined, Finding[]>();
  for (const finding of await build.checked) told.set(finding.element, [...(told.get(finding.element) ?? []), finding]);
  const faults = wrong.flatMap(({ tag, attributes, at, nearest }, n) => {
    const findings = told.get(elements[n]) ?? [];
    const found = findings.find((one) => one.at === at && one.severity === "error");
    const written = `<${tag} ${JSON.stringify(attributes)}>`;
    if (!found) return `${written}: not told at ${at}: ${findings.map(({ message }) => message).join(" ")}`;
    if (JSON.stringify(found.values.nearest) !== JSON.stringify(nearest))
      return `${written}: expected ${nearest.join()}, told ${String(found.values.nearest)}`;
    const text = lineOf(elements[n]!);
    return text === own ? [] : `${written}: shows ${text}`;
  });
  page.remove();
  return faults;
}

async function inBatches(wrong: readonly Wrong[], most = 1000): Promise<void> {
  assert.isAbove(wrong.length, 0);
  for (let n = 0; n < wrong.length; n += most) assert.deepEqual(await tellOf(wrong.slice(n, n + most)), []);
}

/** A slip of a word, in the table that it comes from. */
const inTable = (
  table: readonly string[],
  slips: readonly string[],
  make: (word: string) => Omit<Wrong, "nearest">,
  offered: readonly string[] = table,
): Wrong[] => distinct(slips, table).map((word) => ({ ...make(word), nearest: nearestIn(word, offered) }));
const slipsIn = (table: readonly string[], make: (word: string) => Omit<Wrong, "nearest">): Wrong[] =>
  table.flatMap((word) => inTable(table, [...slipsOf(word), ...otherSlips(word)], make));

const data = JSON.parse(limpet) as {
  readonly stages: readonly { readonly id: string }[];
  readonly outputs: readonly { readonly id: string; readonly stages: readonly { readonly id: string }[] }[];
  readonly alternatives: readonly { readonly id: string }[];
};
const outputs = data.outputs.map(({ id }) => id);
const versions = ["article", ...data.alternatives.map(({ id }) => id)];

describe("a slip on a page", () => {
  afterEach(clear);
  const { warn } = console;
  before(() => (console.warn = () => {}));
  after(() => (console.warn = warn));

  it("in the name of an attribute is told with the nearest, and the author's text stays", async () => {
    const wrong = Object.entries(elementAttributes).flatMap(([tag, attributes]) => {
      const table = [...attributes, "build"];
      if (tag === "mw-build" || tag === "mw-edits") return [];
      return table.flatMap((name) =>
        inTable(
          table,
          // Names of attributes have no case.
          [...slipsOf(name), ...otherSlips(name)].map((slip) => slip.toLowerCase()).filter((slip) => !isPagesOwn(slip)),
          (slip) => ({ tag, attributes: { [slip]: "1" }, at: `/${slip}` }),
        ),
      );
    });
    await inBatches(wrong);
  });

  it("in the name of an attribute of a build refuses the build", async () => {
    const axles = axleNames.flatMap((axle) => [axle, ...axleParts.map((part) => `${axle}-${part}`)]);
    const table = [...elementAttributes["mw-build"], "build", ...buildWords, ...axles];
    const wrong = [...new Set(table)].flatMap((name) =>
      distinct(
        [...slipsOf(name), ...otherSlips(name)].map((slip) => slip.toLowerCase()).filter((slip) => !isPagesOwn(slip)),
        table,
      ),
    );
    const page = document.createElement("div");
    for (const name of wrong) {
      const build = document.createElement("mw-build");
      for (const [word, value] of [
        ["stages", "Spur: 15 to 60"],
        ["rear", "Ring: 10 to 40"],
        [name, "12 to 35"],
      ])
        build.setAttribute(word!, value!);
      build.innerHTML = `<mw-value>${own}</mw-value>`;
      page.append(build);
    }
    document.body.append(page);
    const faults: string[] = [];
    for (const [n, element] of [...page.children].entries()) {
      const name = wrong[n]!;
      const [found] = (await (element as MwBuild).checked).filter(({ at }) => at === `/${name}`);
      const nearest = nearestIn(name, [...new Set(table)]);
      if (found?.severity !== "error") faults.push(`${name}: not told`);
      else if (!(found.values.nearest as string[]).some((one) => nearest.includes(one)))
        faults.push(`${name}: expected ${nearest.join()}, told ${String(found.values.nearest)}`);
      else if (lineOf(element) !== own) faults.push(`${name}: shows ${lineOf(element)}`);
    }
    page.remove();
    assert.deepEqual(faults, []);
  });

  it("in a figure's name is told with the nearest", async () => {
    await inBatches(
      slipsIn(Object.keys(vocabulary), (figure) => ({ tag: "mw-value", attributes: { figure }, at: "/figure" })),
    );
  });

  it("in a word that a figure takes is told with the nearest", async () => {
    const wrong = (Object.entries(vocabulary) as [FigureName, FigureSpec][]).flatMap(([figure, spec]) => {
      const tables: Record<string, readonly string[] | undefined> = {
        scope: spec.scope && scopes,
        unit: spec.unit && units[spec.unit],
        measure: spec.measure,
        drive: spec.drive,
        sign: spec.sign && ["none"],
        base: spec.base && [...outputs, "mean"],
        with: spec.with && outputs,
      };
      return Object.entries(tables).flatMap(([name, table]) =>
        table
          ? slipsIn(table, (word) => ({ tag: "mw-value", attributes: { figure, [name]: word }, at: `/${name}` }))
          : [],
      );
    });
    assert.isTrue(drives.every((word) => wrong.some(({ nearest }) => nearest.includes(word))));
    await inBatches(wrong);
  });

  it("in an id or a version is told with the nearest, by every element that takes one", async () => {
    const takes = (name: string) =>
      Object.entries(elementAttributes)
        .filter(([, attributes]) => (attributes as readonly string[]).includes(name))
        .map(([tag]) => tag);
    const needed: Readonly<Record<string, Record<string, string>>> = {
      "mw-teeth": { of: "primary.driver" },
      "mw-pair-finder": { of: "primary" },
    };
    const wrong = [
      ...takes("at").flatMap((tag) =>
        slipsIn(versions, (at) => ({ tag, attributes: { ...needed[tag], at }, at: "/at" })),
      ),
      ...["mw-ratio-summary", "mw-working", "mw-wheel-speed", "mw-overdrive-gauge"].flatMap((tag) =>
        slipsIn(outputs, (of) => ({ tag, attributes: { of }, at: "/of" })),
      ),
      ...slipsIn(scopes, (scope) => ({ tag: "mw-overdrive-gauge", attributes: { scope }, at: "/scope" })),
      ...slipsIn([...outputs, "mean"], (base) => ({ tag: "mw-overdrive-gauge", attributes: { base }, at: "/base" })),
      ...slipsIn(units.speed, (unit) => ({ tag: "mw-wheel-speed", attributes: { unit }, at: "/unit" })),
      ...slipsIn(versions.slice(1), (show) => ({ tag: "mw-change-table", attributes: { show }, at: "/show" })),
      ...slipsIn(["nothing", ...versions], (from) => ({ tag: "mw-order-list", attributes: { from }, at: "/from" })),
      ...Object.keys(elementAttributes)
        .filter((tag) => tag !== "mw-build" && tag !== "mw-edits")
        .flatMap((tag) => slipsIn(["limpet"], (build) => ({ tag, attributes: { build }, at: "/build" }))),
    ];
    await inBatches(wrong);
  });

  it("in an address of a count is told with the nearest", async () => {
    const stages = [...data.stages, ...data.outputs.flatMap((output) => output.stages)];
    const fields = Object.keys(data.stages[0]!);
    const wrong = [
      ...inTable(
        fields,
        [...slipsOf("driver"), ...otherSlips("driver")],
        (field) => ({ tag: "mw-teeth", attributes: { of: `primary.${field}` }, at: "/of" }),
        [],
      ).map(({ attributes, ...rest }) => ({ ...rest, attributes })),
    ];
    const pages = wrong.map((one) => ({ ...one, nearest: ["primary.driver"] }));
    const ids = stages.map(({ id }) => id);
    const byId = slipsOf("primary")
      .filter((id) => !ids.includes(id))
      .map((id): Wrong => ({
        tag: "mw-teeth",
        attributes: { of: `${id}.driver` },
        at: "/of",
        nearest: ["primary.driver"],
      }));
    // A letter less may lie as near to another field: what is offered then holds the right one too.
    const faults = (await tellOf([...pages, ...byId])).filter((fault) => !/told [^:]*primary\.driver(,|$)/.test(fault));
    assert.deepEqual(faults, []);
  });
});
