import { describe, expect, it } from "vitest";
import { articleFrom, elementsIn, htmlOf, type MadeElement } from "../../calc/test/article/documents.js";
import { expectedIn } from "../../calc/test/article/expected.js";
import { canonical, hasDigit } from "../src/canonical.js";
import { checkFigures } from "../src/index.js";

const isInline = ({ name }: Pick<MadeElement, "name">) => name === "mw-value" || name === "mw-teeth";

/** An article with another content in each element that says something. */
function withContents(seed: number, content: (n: string, element: MadeElement) => readonly string[]) {
  const root = articleFrom(seed);
  for (const element of elementsIn(root)) {
    const { "data-n": n } = element.attributes;
    if (n !== undefined) element.children.splice(0, Infinity, ...content(n, element));
  }
  return root;
}

const nothing = () => [];

describe("articles at random, the same as the page is given", () => {
  it("are to say, in sentences, what the page says there", () => {
    let said = 0;
    for (let seed = 1; seed <= 200; seed++) {
      const expected = expectedIn(withContents(seed, nothing)).filter(isInline);
      const html = htmlOf(withContents(seed, (_, element) => (isInline(element) ? ["0.123"] : [])));
      // Where each element begins, in the order of the document.
      const places = [...html.matchAll(/<mw-(?:value|teeth) data-n="/g)].map(({ index }) => index);
      const told = new Map(checkFigures(html).differences.map((one) => [one.column, one]));
      for (const [at, { texts, n }] of expected.entries()) {
        const start = places[at]!;
        const end = html.indexOf("</mw-", start);
        const found = [...told.values()].filter(({ column }) => column > start && column <= end);
        const [first] = found.filter(({ element }) => /mw-(value|teeth)/.test(element));
        if (texts) expect(canonical(first?.expected ?? "nothing"), `${seed}, ${n}`).toBe(canonical(texts[0]!));
        else expect(first?.kind, `${seed}, ${n}`).toBe("untold");
        said++;
      }
    }
    expect(said).toBeGreaterThan(700);
  });

  it("may say, in blocks, whatever the page says there, and nothing else", () => {
    let said = 0;
    // 1855: all that is told in sentences has as many numbers as one figure of the block, which is another.
    for (const seed of [...Array.from({ length: 200 }, (_, n) => n + 1), 1855]) {
      const expected = new Map(expectedIn(withContents(seed, nothing)).map((one) => [one.n, one.texts]));
      const right = withContents(seed, (n, element) => {
        const texts = expected.get(n) ?? [];
        return isInline(element) ? texts : texts.filter(hasDigit).map((text) => `${text} `);
      });
      expect(
        checkFigures(htmlOf(right)).differences.filter(({ kind }) => kind === "stale"),
        `${seed}`,
      ).toEqual([]);
      const blocks = [...elementsIn(right)].filter(
        (element) => element.children.length && !isInline(element) && element.attributes["data-n"] !== undefined,
      );
      for (const block of blocks) block.children.push(" 987.654321");
      const { differences } = checkFigures(htmlOf(right));
      expect(
        differences.filter(({ kind }) => kind === "stale"),
        `${seed}`,
      ).toHaveLength(blocks.length);
      said += blocks.length;
    }
    expect(said).toBeGreaterThan(200);
  });
});
