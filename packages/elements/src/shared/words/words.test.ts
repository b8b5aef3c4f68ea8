import { assert } from "@esm-bundle/chai";
import { clear, countIn, find, lineOf, press, settle, show, turn, withLimpet } from "../../test/page.js";
import { toolsEn, toolWordsFor } from "../tools/index.js";
import { figureWords } from "@meshwright/calc/languages";
import { addWords, beside, en, figureWordsFor, fillCount, wordsFor, type Words } from "./index.js";

const languages = ["ar", "de", "es", "fr", "ja"] as const;
type Node = string | readonly string[] | { readonly [name: string]: Node };

const wordsOf = async (language: string): Promise<Node> =>
  ((await import(`../../languages/words/${language}.ts`)) as { words: Node }).words;
const toolsOf = async (language: string): Promise<Node> =>
  ((await import(`../../languages/tools/${language}.ts`)) as { words: Node }).words;

/** The languages' files that the page has fetched. */
const fetched = (): string[] =>
  performance
    .getEntriesByType("resource")
    .map(({ name }) => /\/(ar|de|es|fr|ja)(?:-\w+)?\.[jt]s$/.exec(name)?.[1])
    .filter((name): name is string => !!name);

const isForms = (node: Node): node is { readonly [form: string]: string } =>
  typeof node === "object" && !Array.isArray(node) && "other" in node;
const placeholders = (text: string): string => [...new Set(text.match(/\{\w+\}/g))].sort().join();

/** Waits for what comes with a file. */
async function shows(seen: () => string, wanted: string): Promise<void> {
  for (let n = 0; n < 100 && seen() !== wanted; n++) await settle(1);
  assert.equal(seen(), wanted);
}

/** Every string with its path; sentences by count as one. */
function* strings(node: Node, path: string): Generator<[string, string | { readonly [form: string]: string }]> {
  if (typeof node === "string" || isForms(node)) yield [path, node];
  else for (const [name, one] of Object.entries(node)) yield* strings(one as Node, `${path}.${name}`);
}

/** Said in the same letters in two languages, or of signs only. */
const shared = new Set([
  "es.things.motor",
  ...["article", ...["module", "diametralPitch", "lobes", "exact"].map((name) => `editor.fields.${name}`)].map(
    (path) => `fr.${path}`,
  ),
]);

// Every module of the library is a request here: the record has to have room for them.
performance.setResourceTimingBufferSize(5000);

describe("languages", () => {
  afterEach(clear);

  it("are not fetched by a page in English, nor where there is none", async () => {
    await show(withLimpet(`<p><mw-value of="rear">43.32</mw-value></p><mw-ratio-summary></mw-ratio-summary>`));
    const page = await show(`<div lang="it">${withLimpet(`<mw-ratio-summary></mw-ratio-summary>`)}</div>`);
    assert.include(lineOf(page), figureWords.total);
    assert.include(lineOf(page), "43,32");
    assert.deepEqual(fetched(), []);
  });

  it("switch words and digits live, by what is around", async () => {
    const page = await show(
      withLimpet(
        `<p><mw-value of="rear">43.32</mw-value> <mw-value figure="standing" of="rear">inside</mw-value></p><mw-ratio-summary></mw-ratio-summary>`,
      ),
    );
    const summary = find(page, "mw-ratio-summary");
    const line = () => lineOf(find(page, "p"));
    assert.equal(line(), "43.32 inside");

    page.lang = "de";
    await shows(line, "43,32 im Bereich");
    assert.include(lineOf(summary), "Motorumdrehungen je Radumdrehung");
    assert.deepEqual([...new Set(fetched())], ["de"]);

    page.lang = "ar-EG";
    page.dir = "rtl";
    await shows(line, "٤٣٫٣٢ ضمن المدى");
    assert.include(lineOf(summary), "دورات المحرك لكل دورة عجلة");
    assert.equal(getComputedStyle(find(summary.shadowRoot!, "table")).direction, "rtl");

    page.lang = "ja";
    page.removeAttribute("dir");
    await shows(line, "43.32 範囲内");

    page.removeAttribute("lang");
    await shows(line, "43.32 inside");
  });

  it("stand beside each other on one page", async () => {
    const page = await show(
      withLimpet(
        ["en", "de", "fr", "es", "ja", "ar"]
          .map((lang) => `<p lang="${lang}"><mw-value figure="standing" of="rear">x</mw-value></p>`)
          .join(""),
      ),
    );
    const all = () =>
      [...page.querySelectorAll("mw-value")].map((one) => one.shadowRoot!.textContent!.trim()).join(", ");
    await shows(all, "inside, im Bereich, dans la plage, dentro, 範囲内, ضمن المدى");
  });

  it("reach names, messages and what is announced", async () => {
    const page = await show(
      `<div lang="de">${withLimpet(`<p><mw-teeth of="row.teeth.1">31</mw-teeth></p><mw-edits></mw-edits>`)}</div>`,
    );
    const count = countIn(find(page, "mw-teeth"));
    await shows(() => count.getAttribute("aria-label")!.split(", ")[1]!, "Zähnezahl");
    press(count, "ArrowUp");
    await turn();
    await settle();
    assert.include(lineOf(find(page, "mw-edits")), "Rückgängig");
    const was = find<HTMLElement>(find(page, "mw-teeth").shadowRoot!, "[data-was]");
    assert.equal(was.dataset.was, "Artikel 31");
  });

  it("may come as a file without imports, and as values without names", async () => {
    const page = await show(`<div lang="sw">${withLimpet(`<mw-value figure="standing" of="rear">x</mw-value>`)}</div>`);
    const shown = () => find(page, "mw-value").shadowRoot!.textContent!.trim();
    assert.equal(shown(), "inside");
    const values = (node: object): unknown[] =>
      Object.values(node).map((one) => (typeof one === "object" && !("other" in one) ? values(one) : one));
    const list = values(figureWords).map((one) => (one === "inside" ? "ndani" : one));
    (globalThis as unknown as Record<symbol, Record<string, unknown>>)[Symbol.for("meshwright tables 1")]![
      "figures-sw"
    ] = list;
    dispatchEvent(new Event("meshwright-words"));
    await turn();
    assert.equal(shown(), "ndani");
    assert.equal(figureWordsFor("sw").total, figureWords.total);
    addWords("sw", en, { ...figureWords, inside: "ndani ya" });
    await turn();
    assert.equal(shown(), "ndani ya");
  });

  it("of another version fill what they lack in English", () => {
    addWords("xh", { undo: "Buyisela" } as unknown as Words);
    assert.equal(wordsFor("xh").undo, "Buyisela");
    assert.equal(wordsFor("xh").reset, en.reset);
    assert.equal(figureWordsFor("xh").total, figureWords.total);
  });

  it("are brought from beside the self-contained script", () => {
    beside("words")("fr");
    beside("words")("it");
    assert.isNull(document.querySelector('script[src*="words-"]'), "no script to be found, none brought");
    const script = document.createElement("script");
    script.type = "text/plain";
    script.src = "/assets/meshwright-article.js?v=2";
    document.head.append(script);
    beside("words")("it");
    beside("tools")("fr");
    const brought = [...document.querySelectorAll<HTMLScriptElement>('script[src*="-"]')].filter(({ src }) =>
      /(words|tools)-/.test(src),
    );
    assert.deepEqual(
      brought.map(({ src }) => new URL(src).pathname),
      ["/assets/tools-fr.js"],
    );
    for (const one of [script, ...brought]) one.remove();
  });

  for (const language of languages) {
    it(`${language} says everything`, async () => {
      for (const [english, table] of [
        [en, await wordsOf(language)],
        [toolsEn, await toolsOf(language)],
      ] as const) {
        const [ours, theirs] = [new Map(strings(english as Node, language)), new Map(strings(table, language))];
        assert.deepEqual([...theirs.keys()], [...ours.keys()]);
        for (const [path, text] of theirs) {
          const known = ours.get(path)!;
          if (typeof text === "object") {
            const { pluralCategories } = new Intl.PluralRules(language).resolvedOptions();
            assert.sameMembers(Object.keys(text), pluralCategories, path);
            assert.equal(placeholders(text.other!), placeholders((known as { other: string }).other), path);
            for (const one of Object.values(text)) assert.match(placeholders(one), /^(\{0\})?$/, path);
          } else {
            assert.equal(placeholders(text), placeholders(known as string), path);
            assert.notMatch(text, /^\s|\s$|^$/, path);
            if (/\p{L}/u.test(text)) assert.isTrue(text !== known || shared.has(path), `${path} is English: ${text}`);
            // A word in Latin letters is a unit or a name of the trade.
            if (language === "ar" || language === "ja")
              assert.notMatch(text.replace(/\{\w+\}|\bkV\b|\bV\b/g, ""), /\p{Script=Latin}/u, path);
          }
        }
      }
      assert.isNotNull(toolWordsFor(language));
    });
  }

  it("take the form that a count asks for", async () => {
    const { readers } = (await wordsOf("ar")) as unknown as Words;
    assert.deepEqual(
      [0, 1, 2, 3, 11, 100].map((count) => fillCount(readers, count, "ar-EG")),
      [
        readers.zero!,
        readers.one!,
        readers.two!,
        "نسخة قارئ: ٣ تغييرات.",
        "نسخة قارئ: ١١ تغييرًا.",
        "نسخة قارئ: ١٠٠ تغيير.",
      ],
    );
  });
});
