import { assert } from "@esm-bundle/chai";
import "axe-core";
import type axeCore from "axe-core";
import { addFigures } from "../../shared/drawn/index.js";
import { define } from "../../shared/element/index.js";
import { fitFigures, motionFigures } from "@meshwright/calc/report";
import type { MwBuild } from "../build/index.js";
import { clear, find, lineOf, settle, show, withLimpet } from "../../test/page.js";
import { MwPairFinder } from "./index.js";

addFigures({ ...fitFigures, ...motionFigures });
define(MwPairFinder);

const { axe } = globalThis as unknown as { axe: typeof axeCore };

const finder = async (width?: number): Promise<HTMLElement> => {
  const page = await show(withLimpet("<mw-pair-finder></mw-pair-finder>"), width);
  const element = find(page, "mw-pair-finder");
  await until(() => /reach(es)? the range|No pair/.test(lineOf(element)));
  return element;
};

async function until(question: () => boolean): Promise<void> {
  while (!question()) await settle(1);
}

const pairs = (element: Element, kind: string): string[] =>
  [...element.shadowRoot!.querySelectorAll(`tbody.${kind}`)].map((body) =>
    body.textContent!.replace(/\s+/g, " ").trim(),
  );

describe("mw-pair-finder", () => {
  afterEach(clear);

  it("finds the one pair of the shelf that reaches the range and fits", async () => {
    const element = await finder();
    assert.match(lineOf(element), /1 pair reaches the range and fits\./);
    const [only, ...others] = pairs(element, "hit");
    assert.match(only!, /^15 → 62 44\.30 · 43\.32 30\.8 mm .* in the build/);
    assert.deepEqual(others, []);
  });

  it("keeps the tempting pair in sight with what it lacks, and never the pitch that is nearly the same", async () => {
    const element = await finder();
    const misses = pairs(element, "miss");
    assert.isTrue(
      misses.some((text) => /^17 → 66 .*1\.9 mm short/.test(text)),
      misses.join("\n"),
    );
    assert.isFalse(misses.some((text) => /^16 → /.test(text)));
  });

  it("makes the pair that is taken the reader's edit", async () => {
    const element = await finder();
    const told: unknown[] = [];
    element.addEventListener("mw-change", (event) => told.push((event as CustomEvent).detail));
    const button = find<HTMLButtonElement>(element.shadowRoot!, 'button[aria-label="Take it: 17 drives 66"]');
    button.focus();
    button.click();
    await settle();
    assert.equal(element.shadowRoot!.activeElement!.getAttribute("aria-label"), "in the build: 17 drives 66");
    button.click();
    const { store } = find<MwBuild>(element.parentElement!, "mw-build");
    // What is taken are the parts: their counts, and their names.
    const parts = store.article!.parts!.filter(({ teeth }) => teeth === 17 || teeth === 66);
    const { "primary.fitted": fitted, ...counts } = store.layer.sets;
    assert.deepEqual(counts, { "primary.driver": 17, "primary.driven": 66 });
    assert.sameMembers(
      [...(fitted as string[])],
      parts.map(({ id }) => id),
    );
    assert.deepEqual(told, [store.layer.sets]);
    assert.isTrue(pairs(element, "miss").some((text) => /^17 → 66 .* in the build/.test(text)));
  });

  it("lets the reader move the range, refuses what is no number, and keeps the last good one", async () => {
    const element = await finder();
    const to = find<HTMLInputElement>(element.shadowRoot!, 'input[name="to"]');
    const enter = async (text: string) => {
      to.value = text;
      to.dispatchEvent(new Event("change", { bubbles: true }));
      await settle();
    };
    await enter("lots");
    assert.equal(to.value, "46");
    assert.include(lineOf(element), "Kept 46.");
    await enter("43");
    await until(() => /No pair reaches/.test(lineOf(element)));
    const { store } = find<MwBuild>(element.parentElement!, "mw-build");
    assert.deepEqual(store.layer.sets, { "target.to": 43 });
  });

  it("draws hits, misses, the range and the mount, and says so in words", async () => {
    const element = await finder();
    const picture = find(element.shadowRoot!, "svg");
    assert.include(picture.getAttribute("aria-label")!, "1 pair reaches the range and fits.");
    assert.include(picture.textContent!, "15 · 62");
    assert.include(picture.textContent!, "30.3");
    assert.include(picture.textContent!, "31.3");
  });

  /** Texts that stand over each other, or beyond the picture's edge. */
  const clashes = (picture: Element): string[] => {
    const edge = picture.getBoundingClientRect();
    const texts = [...picture.querySelectorAll("text")].map((text) => {
      const { left, right, top, bottom } = text.getBoundingClientRect();
      // A line of digits leaves room above and below itself.
      const spare = (bottom - top) / 5;
      return { text: text.textContent!.trim(), left, right, top: top + spare, bottom: bottom - spare };
    });
    return texts.flatMap((one, n) => [
      ...texts
        .slice(n + 1)
        .filter((two) => one.left < two.right && two.left < one.right && one.top < two.bottom && two.top < one.bottom)
        .map((two) => `${one.text} over ${two.text}`),
      ...(one.left < edge.left - 1 || one.right > edge.right + 1 ? [`${one.text} cut off`] : []),
    ]);
  };

  it("sets no label over another, nor over the box's edge, nor beyond its own, whatever the width and the range", async () => {
    for (const width of [335, 568, 700]) {
      const element = await finder(width);
      const { store } = find<MwBuild>(element.parentElement!, "mw-build");
      const ranges = [
        {},
        { "target.from": 43, "target.to": 44 },
        { "target.from": 10, "target.to": 60 },
        { "target.from": 43.25, "target.to": 43.75 },
      ];
      for (const range of ranges) {
        store.change(range);
        await settle(1);
        await until(() => /reach(es)? the range|No pair/.test(lineOf(element)));
        await settle();
        const picture = find(element.shadowRoot!, "svg");
        assert.deepEqual(clashes(picture), [], `${width} ${JSON.stringify(range)}`);
        assert.isAtLeast(picture.querySelectorAll("text.pair").length, 3);
        const box = find(picture, "rect").getBoundingClientRect();
        for (const label of picture.querySelectorAll("text.pair")) {
          const { left, right } = label.getBoundingClientRect();
          const crossed = [box.left, box.right].filter((edge) => left < edge - 1 && edge + 1 < right);
          const { top, bottom } = label.getBoundingClientRect();
          const beside = bottom < box.top + 4 || top > box.bottom - 4;
          assert.isTrue(beside || !crossed.length, `${label.textContent} at ${width}`);
        }
      }
    }
  });

  it("leaves axe nothing to find, and a narrow page in its place", async () => {
    const element = await finder(343);
    const { violations } = await axe.run(element.parentElement!, { rules: { region: { enabled: false } } });
    assert.deepEqual(
      violations.map(({ id, nodes }) => `${id}: ${nodes[0]!.html}`),
      [],
    );
    assert.isAtMost(element.scrollWidth, 344);
  });
});
