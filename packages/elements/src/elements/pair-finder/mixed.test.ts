import { assert } from "@esm-bundle/chai";
import { define } from "../../third/index.js";
import type { MwBuild } from "../build/index.js";
import { MwBenchCard } from "../bench-card/index.js";
import { MwOrderList } from "../order-list/index.js";
import { MwTrainDrawing } from "../train-drawing/index.js";
import { clear, find, lineOf, settle, show, turn } from "../../test/page.js";
import { MwPairFinder } from "./index.js";

define(MwPairFinder, MwOrderList, MwBenchCard, MwTrainDrawing);

// Parts of different origin on one shelf, worked out apart from this project.
interface Pair {
  readonly driver: string;
  readonly driven: string;
  readonly centre_mm: string;
  readonly ratio: string;
  readonly needsSleeve: boolean;
  readonly needsPlate: boolean;
  readonly toPay_EUR: string;
}

interface Case {
  readonly build: {
    readonly parts: readonly { readonly id: string; readonly name: string; readonly teeth?: number }[];
    readonly mounts: readonly { readonly opening: string }[];
    readonly stages: readonly { readonly id: string; readonly driver: number; readonly driven: number }[];
  };
  readonly stage: string;
  readonly expect: readonly Pair[];
}

const file = new URL("../../../../../tests/vectors/mixed.json", import.meta.url);
const cases = (await (await fetch(file)).json()) as readonly Case[];

/** A fraction with two digits, half away from zero; noughts at the end fall away down to the least. */
function decimal(fraction: string, least: number): string {
  const [top, bottom] = fraction.split("/").map(BigInt) as [bigint, bigint];
  const hundredths = (200n * top + bottom) / (2n * bottom);
  const digits = String(hundredths).padStart(3, "0");
  let text = `${digits.slice(0, -2)}.${digits.slice(-2)}`;
  while (text.endsWith("0") && text.length - text.indexOf(".") - 1 > least) text = text.slice(0, -1);
  return text;
}

/** A fraction and a short decimal. */
function plus(fraction: string, more: string): string {
  const [top, bottom] = fraction.split("/").map(BigInt) as [bigint, bigint];
  const hundredths = BigInt(Math.round(Number(more) * 100));
  return `${top * 100n + hundredths * bottom}/${bottom * 100n}`;
}

const markup = (
  json: string,
  stage: string,
): string => `<mw-build id="mixed"><script type="application/json">${json}</script></mw-build>
  <mw-pair-finder of="${stage}"></mw-pair-finder><mw-ratio-summary></mw-ratio-summary>
  <mw-train-drawing></mw-train-drawing><mw-order-list></mw-order-list><mw-bench-card></mw-bench-card>
  <mw-value figure="reduction" of="rear"></mw-value><mw-value figure="fit" of="${stage}"></mw-value>
  <mw-value figure="centre" of="${stage}"></mw-value>`;

const plain = (element: Element | null): string => (element ? lineOf(element).replaceAll("\u00a0", " ") : "");

const until = async (question: () => boolean): Promise<void> => {
  while (!question()) await settle(1);
};

describe("mw-pair-finder on shelves of parts of different origin", () => {
  afterEach(clear);

  for (const [n, { build, stage, expect }] of cases.entries())
    it(`lists exactly the pairs of case ${n}, and after each is taken every element says the same`, async () => {
      const page = await show(markup(JSON.stringify(build), stage));
      const one = (tag: string) => find(page, tag);
      const finder = one("mw-pair-finder");
      const { store } = find<MwBuild>(page, "mw-build");
      const root = finder.shadowRoot!;
      const rows = () => [...root.querySelectorAll("tbody.hit")];
      await until(() => /reach(es)? the range|No pair/.test(lineOf(finder)));
      for (let more; (more = root.querySelector<HTMLElement>("button.more-pairs"));) {
        more.click();
        await settle(1);
      }
      const part = (id: string) => build.parts.find((each) => each.id === id)!;
      const nameOf = (pair: Pair) => `${part(pair.driver).name} + ${part(pair.driven).name}`;
      const counts = (pair: Pair) => `${part(pair.driver).teeth} → ${part(pair.driven).teeth}`;
      const money = (pair: Pair) => (pair.toPay_EUR === "0/1" ? "Owned already" : `€${decimal(pair.toPay_EUR, 2)}`);
      const centre = (pair: Pair) => `${decimal(pair.centre_mm, 1)} mm`;
      const { opening } = build.mounts[0]!;
      const axes = (pair: Pair) => `${decimal(plus(pair.centre_mm, opening.replace(" mm", "")), 1)} mm`;
      // The pair that stands there, of all those of its counts the one that is held best, costs what it costs and stays.
      const { driver: now, driven: then } = build.stages.find(({ id }) => id === stage)!;
      const standing = expect.filter((pair) => counts(pair) === `${now} → ${then}`);
      let stays: Pair | undefined;
      const listed = rows().map((row) => {
        const cells = [...row.querySelectorAll("tr:first-child > *")].slice(0, 4).map(plain);
        if (cells[3] === "Stays") {
          assert.isUndefined(stays);
          const words = plain(row.querySelector(".words"));
          stays = standing.find((pair) => words.startsWith(nameOf(pair)));
          assert.ok(stays, words);
          cells[3] = money(stays!);
        }
        const [, driver, driven, rest] = /^(.*?) \+ ([^+.]*)( \+ [^.]*)?\./.exec(plain(row.querySelector(".words")))!;
        return [...cells, `${driver} + ${driven}`, /Sleeve/.test(rest ?? ""), /Plate/.test(rest ?? "")].join(" | ");
      });
      const expected = expect.map((pair) =>
        [
          counts(pair),
          decimal(pair.ratio, 2),
          centre(pair),
          money(pair),
          nameOf(pair),
          pair.needsSleeve,
          pair.needsPlate,
        ].join(" | "),
      );
      assert.sameMembers(listed, expected);
      for (const pair of expect.filter((each) => each !== stays)) {
        const row = rows().find((each) => {
          const words = plain(each.querySelector(".words"));
          return words.startsWith(`${nameOf(pair)}.`) || words.startsWith(`${nameOf(pair)} +`);
        })!;
        find<HTMLElement>(row, "button").click();
        await turn();
        await settle(1);
        const values = [...page.querySelectorAll("mw-value")].map(plain);
        assert.deepEqual(values, [decimal(pair.ratio, 2), "fits", centre(pair)]);
        const summary = plain(one("mw-ratio-summary"));
        assert.include(summary, counts(pair));
        assert.include(summary, decimal(pair.ratio, 2));
        // Drawn as it is set, and the finder said how.
        const set = axes(pair);
        assert.include(plain(one("mw-train-drawing")), set);
        const words = plain(row.querySelector(".words"));
        if (opening === "0 mm") assert.notInclude(words, "Set at");
        else assert.include(words, `Set at ${set}, opened by ${opening}.`);
        const order = plain(one("mw-order-list"));
        if (pair.toPay_EUR !== "0/1") assert.include(order, `€${decimal(pair.toPay_EUR, 2)}`);
        else assert.notInclude(order, "Together");
        for (const id of [pair.driver, pair.driven]) assert.include(order, part(id).name);
        // What was there before is left over.
        const used = order.replace(/Left over:.*/, "");
        assert.strictEqual(/Sleeve/.test(used), pair.needsSleeve, order);
        assert.strictEqual(/Plate/.test(used), pair.needsPlate, order);
        const card = plain(one("mw-bench-card"));
        assert.include(card, centre(pair));
        assert.include(card, counts(pair));
        assert.notMatch(card + order, /does not fit|too far|too close|cannot tell/);
        assert.lengthOf(root.querySelectorAll('tbody.hit button[aria-disabled="true"]'), 1);
        // All of it is one edit.
        store.undo();
        assert.deepEqual(store.layer.sets, {});
        await turn();
      }
    });
});
