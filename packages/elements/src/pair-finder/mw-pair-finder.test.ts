import { assert } from "@esm-bundle/chai";
import "axe-core";
import type axeCore from "axe-core";
import { addFigures, define } from "../base/index.js";
import { fitFigures, motionFigures } from "@meshwright/calc/report";
import type { MwBuild } from "../build/index.js";
import { clear, find, lineOf, settle, show, withLimpet } from "../test/page.js";
import { MwPairFinder } from "./index.js";

addFigures({ ...fitFigures, ...motionFigures });
define(MwPairFinder);

const { axe } = globalThis as unknown as { axe: typeof axeCore };

const finder = async (width?: number): Promise<HTMLElement> => {
  const page = await show(withLimpet("<mw-pair-finder></mw-pair-finder>"), width);
  const element = find(page, "mw-pair-finder");
  await until(() => /reaches? the range|No pair/.test(lineOf(element)));
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
    assert.match(only!, /^15 to 62 44\.30 · 43\.32 30\.8 mm .* in the build/);
    assert.deepEqual(others, []);
  });

  it("keeps the tempting pair in sight with what it lacks, and refuses the pitch that is nearly the same", async () => {
    const element = await finder();
    const misses = pairs(element, "miss");
    assert.isTrue(
      misses.some((text) => /^17 to 66 .*1\.9 mm short/.test(text)),
      misses.join("\n"),
    );
    const near = misses.find((text) => /^16 to 62/.test(text))!;
    assert.match(near, /Do not mesh them\./);
    assert.notInclude(near, "Take it");
  });

  it("makes the pair that is taken the reader's edit", async () => {
    const element = await finder();
    const told: unknown[] = [];
    element.addEventListener("mw-change", (event) => told.push((event as CustomEvent).detail));
    find<HTMLButtonElement>(element.shadowRoot!, 'button[aria-label="Take it: 17 to 66"]').click();
    await settle();
    const { store } = find<MwBuild>(element.parentElement!, "mw-build");
    assert.deepEqual(store.layer.sets, { "primary.driver": 17, "primary.driven": 66 });
    assert.deepEqual(told, [{ "primary.driver": 17, "primary.driven": 66 }]);
    assert.isTrue(pairs(element, "miss").some((text) => /^17 to 66 .* in the build/.test(text)));
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
