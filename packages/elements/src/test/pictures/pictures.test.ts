import { assert } from "@esm-bundle/chai";
import { pairwise, type Combination } from "./cover.js";
import { factors, tested } from "./drawn.js";
import { drawnIn, letters, saidIn, wordsOf } from "./said.js";

// Nothing is cut, sideways, or on top of another, whatever comes together: any two of element, width, size of text, language,
// build, place and state. All of it in one engine; of the others, whose letters are wider, every third. The product is a long
// test.
/** What more than two have to come together for. */
const seen: readonly Combination[] = [
  // Counts of a row that go on below each other; names of one word that is longer than there is room.
  ["drive-line", "240", "16", "en", "six axles", "cell", "published"],
  ["drive-line", "240", "32", "es", "six axles", "block", "changed"],
].map((values) => Object.fromEntries(Object.keys(factors).map((name, n) => [name, values[n]!])));

const isChromium = /Chrom(e|ium)\//.test(navigator.userAgent);
describe("nothing is cut, sideways or on top of another:", () => {
  tested(pairwise(factors, 7).filter((_, n) => isChromium || n % 3 === 0));
  tested(seen);
});

// Every element at once, in every language: words that are English ones, and what stands apart in Arabic.
describe("in another language", () => {
  for (const language of ["de", "fr", "es", "ja", "ar"])
    it(`nothing of ours is said in English: ${language}`, async () => {
      const said = await saidIn(language);
      assert.isAbove(said.length, 300);
      const own = wordsOf(language);
      const english = [...wordsOf("en")].filter((word) => !own.has(word));
      const left = said.filter((text) =>
        (text.match(letters) ?? []).some((word) => english.includes(word.toLowerCase())),
      );
      assert.deepEqual(left, []);
    });

  it("names, and numbers with their signs and units, stand for themselves among Arabic words", async () => {
    const said = await saidIn("ar", "texts");
    const mixed = said.filter((text) => /[A-Za-z]/.test(text));
    assert.isAbove(mixed.length, 60);
    const bare = mixed.filter((text) => /[A-Za-z]/.test(text.replace(/\u2068[^\u2069]*\u2069/g, "")));
    assert.deepEqual(bare, []);
    assert.isTrue(said.some((text) => /\u2068[\d٠-٩.٫]+[\s\u00a0]mm\u2069/.test(text)));
  });

  it("what ends an Arabic sentence stands behind the name before it", async () => {
    const page = await drawnIn("ar", ["pair-finder"]);
    const words = page.querySelector("mw-pair-finder")!.shadowRoot!.querySelector("tbody .quiet")!;
    const texts = document.createTreeWalker(words, NodeFilter.SHOW_TEXT);
    const boxes: DOMRect[] = [];
    for (let node = texts.nextNode(); node; node = texts.nextNode()) {
      const at = node.textContent!.search(/[A-Za-z\d]\u2069?\.?$/);
      for (const [from, to] of [
        [at, at + 1],
        [node.textContent!.length - 1, node.textContent!.length],
      ] as const) {
        const range = document.createRange();
        range.setStart(node, Math.max(0, from));
        range.setEnd(node, to);
        boxes.push(range.getBoundingClientRect());
      }
    }
    // The point is the leftmost sign: an Arabic line ends there.
    const point = boxes.at(-1)!;
    for (const box of boxes.slice(0, -1).filter(({ top }) => Math.abs(top - point.top) < 4))
      assert.isAtMost(point.left, box.left + 1);
    page.remove();
  });
});
