import { reportWords } from "@meshwright/calc/languages";
import { figureWordsFor, reportWordsFor, wordsFor } from "../../shared/words/index.js";
import { toolWordsFor } from "../../shared/tools/index.js";
import { find, limpet, settle } from "../page.js";
import { factors, markupOf } from "./drawn.js";

export const letters = /[A-Za-z\u00c0-\u024f]{4,}/g;

/** What authors write themselves is no word of any language here. */
const nameless = JSON.stringify(JSON.parse(limpet), (name, value: unknown) =>
  typeof value === "string" && /^(title|label|note|name|group|maker|source|driverLabel|drivenLabel)$/.test(name)
    ? "Qzx"
    : value,
);

/** Every word of four letters and more in our lists of a language. */
export function wordsOf(language: string): ReadonlySet<string> {
  const lists = [figureWordsFor(language), reportWordsFor(language), wordsFor(language), toolWordsFor(language)];
  const texts = (node: unknown): string[] =>
    typeof node === "string" ? [node] : Object.values(node as object).flatMap((one) => texts(one));
  return new Set(texts(lists).flatMap((text) => (text.match(letters) ?? []).map((word) => word.toLowerCase())));
}

/** Elements in a page of a language, once all its words have come. */
export async function drawnIn(
  language: string,
  elements: readonly string[] = factors["element"]!,
): Promise<HTMLElement> {
  const page = document.createElement("div");
  page.lang = language;
  page.dir = language === "ar" ? "rtl" : "ltr";
  page.style.width = "700px";
  page.innerHTML =
    `<mw-build><script type="application/json">${elements.length > 1 ? nameless : limpet}</script></mw-build>` +
    elements.map(markupOf).join("");
  document.body.append(page);
  for (let n = 0; n < 80; n++) {
    await settle(1);
    const isThere =
      reportWordsFor(language).exactly !== reportWords.exactly && toolWordsFor(language).copied !== "Copied.";
    const finder = elements.includes("pair-finder") && find(page, "mw-pair-finder").shadowRoot!.querySelector("tbody");
    if (isThere && (finder || !elements.includes("pair-finder"))) break;
  }
  await settle(2);
  return page;
}

/** All that is said by elements in a language: texts, and what is heard in their place. */
export async function saidIn(language: string, what: "all" | "texts" = "all"): Promise<readonly string[]> {
  const page = await drawnIn(language);
  const said: string[] = [];
  const walk = (node: Node): void => {
    if (node.nodeType === 3) {
      const text = node.textContent!.replace(/ +/g, " ").trim();
      if (text) said.push(text);
    } else if (!/^(style|script)$/i.test(node.nodeName)) {
      const element = node as Element;
      if (what === "all" && node.nodeType === 1)
        for (const name of ["aria-label", "title", "placeholder", "aria-valuetext"])
          if (element.hasAttribute(name)) said.push(element.getAttribute(name)!);
      for (const child of (element.shadowRoot ?? element).childNodes) walk(child);
    }
  };
  for (const name of factors["element"]!) walk(find(page, `mw-${name}`));
  page.remove();
  return said;
}
