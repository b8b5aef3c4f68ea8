import { assert } from "@esm-bundle/chai";
import { articleFrom, htmlOf } from "../../../calc/test/article/documents.js";
import { expectedIn, type Expected } from "../../../calc/test/article/expected.js";
import { MwOverdriveGauge } from "../elements/overdrive-gauge/index.js";
import { MwWheelSpeed } from "../elements/wheel-speed/index.js";
import { MwWorking } from "../elements/working/index.js";
import { define } from "../third/index.js";
import { clear, find, lineOf, settle, show } from "./page.js";

define(MwWorking, MwWheelSpeed, MwOverdriveGauge);

/** Names are set apart where lines run from the right: that is no part of what is said. */
const bare = (text: string): string =>
  text
    .replace(/[\u2068\u2069]/g, "")
    .replace(/\s+/g, " ")
    .trim();

/** What a block shows, as texts in the order in which calc says them. */
function textsIn(element: HTMLElement): string[] {
  const root = element.shadowRoot!;
  const texts = (selector: string, under: ParentNode = root) =>
    [...under.querySelectorAll<HTMLElement>(selector)].map(({ textContent }) => bare(textContent!));
  const gauge = () => [
    ...[...root.querySelectorAll("svg[part=ground]")].map((picture) => picture.getAttribute("aria-label")!),
    ...texts("p[part=note]"),
  ];
  const table = (one: HTMLTableElement): string[] => {
    const [head, ...rows] = [...one.rows];
    const heads = [...head!.cells].map((cell) => bare((cell.querySelector(".line > span") ?? cell).textContent!));
    const lines = rows.flatMap((row) => {
      const [first, ...cells] = [...row.cells];
      const narrow = first!.querySelector(".narrow");
      narrow?.remove();
      const parts = first!.querySelector(".line") ? texts(".line > span", first!) : [bare(first!.textContent!)];
      return [...parts, ...cells.map(({ textContent }) => bare(textContent!))];
    });
    return [...heads, ...lines];
  };
  if (element.localName === "mw-overdrive-gauge") return gauge();
  const notes = element.localName === "mw-wheel-speed" ? ".root > p:not(.fault)" : "p.note";
  return [...[...root.querySelectorAll("table")].flatMap(table), ...texts(notes)].filter(Boolean);
}

const shownBy = (element: HTMLElement, { name }: Expected): readonly string[] | undefined => {
  const texts = /value|teeth/.test(name) ? [lineOf(element)] : textsIn(element);
  return texts.some(Boolean) ? texts : undefined;
};

describe("articles at random", () => {
  afterEach(clear);

  for (let first = 1; first <= 200; first += 25)
    it(`say on the page what calc says: ${first} to ${first + 24}`, async () => {
      let said = 0;
      for (let seed = first; seed < first + 25; seed++) {
        const root = articleFrom(seed);
        const page = await show(htmlOf(root));
        const expected = expectedIn(root);
        const differing = (): string[] =>
          expected.flatMap((one) => {
            const element = find(page, `[data-n="${one.n}"]`);
            const shown = shownBy(element, one)?.map(bare);
            const texts = one.texts?.map(bare);
            return JSON.stringify(shown) === JSON.stringify(texts)
              ? []
              : `${seed} ${element.outerHTML.slice(0, 200)}\n  shows ${JSON.stringify(shown)}\n  not ${JSON.stringify(texts)}`;
          });
        // A language comes with a file.
        for (let n = 0; n < 100 && differing().length; n++) await settle(1);
        assert.deepEqual(differing(), []);
        said += expected.reduce((sum, { texts = [] }) => sum + texts.length, 0);
      }
      assert.isAbove(said, 500);
    });
});
