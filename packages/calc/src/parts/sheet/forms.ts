import type { PartForm } from "../../stages/index.js";
import { plain } from "./plain.js";

/** Words for what teeth are like, in the six languages; parts of words, since some languages write them together. */
export const formWords: Readonly<Record<PartForm, string>> = {
  internal: "internal|inside teeth|annulus|hohlrad|innenverzahn|innenzahn|intérieur|interior|内歯|داخلي",
  worm: "worm|schnecke|roue à vis|roue de vis|roue tangente|tornillo|ウォーム|دودي",
  hypoid: "hypoid|hipoid|ハイポイド|هيبويد",
  bevel:
    "bevel|crown wheel|kegelrad|kegelritzel|kegelverzahn|kegelstirn|tellerrad|conique|cónic|かさ歯|傘歯|ベベル|مخروط",
  crown: "crown gear|kronrad|kronenrad|フェースギ",
  helical: "helical|schrägverz|schrägstirn|schrägzahn|hélicoïd|helicoid|はすば|斜歯|ヘリカル|حلزون",
  spur: "spur|straight|geradverz|geradzahn|stirnrad|droit|recto|平歯|スパー|مستقيم",
};

let patterns: readonly (readonly [PartForm, RegExp])[] | undefined;

/** What a text says of teeth; nothing where it says nothing. */
export function formOf(text: string): PartForm | undefined {
  if (text.length > 300) return undefined;
  patterns ??= Object.entries(formWords).map(([form, words]) => [
    form as PartForm,
    new RegExp(words.split("|").map(plain).join("|")),
  ]);
  const said = plain(text);
  return patterns.find(([, pattern]) => pattern.test(said))?.[0];
}
