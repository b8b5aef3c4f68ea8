import type { CellReader, Choice } from "./meaning.js";
import { plain, setOf } from "./plain.js";

const yesWords = setOf(
  "yes|y|true|ok|available|in stock|on sale|left in stock|pcs in stock|ja|j|wahr|lieferbar|sofort lieferbar|auf lager|am lager|lagernd|verfügbar|vorhanden|erhältlich|stück auf lager|oui|o|vrai|dispo|disponible|en stock|sí|s|verdadero|en existencia|en existencias|hay|あり|有|有り|はい|在庫あり|在庫有り|販売中|○|◯|〇|نعم|متوفر|متوفرة|متاح|موجود|✓|✔|☑|✅|●",
);
const noWords = setOf(
  "no|n|false|unavailable|discontinued|out of stock|sold out|not available|not in stock|none|nein|falsch|ausverkauft|vergriffen|nicht lieferbar|nicht auf lager|nicht verfügbar|non|faux|épuisé|épuisée|indisponible|non disponible|en rupture|rupture|rupture de stock|en rupture de stock|falso|agotado|agotada|no disponible|sin stock|sin existencias|なし|無|無し|いいえ|在庫なし|在庫無し|在庫切れ|売り切れ|品切れ|欠品|完売|لا|غير متوفر|غير متوفرة|غير متاح|نفد|نفدت الكمية|✗|✘|☐|❌",
);
const pieceWords = setOf("x|pc|pcs|piece|pieces|stk|stück|st|pièces|piezas|uds|unidades|個|本|枚|قطعة|قطع");

const isCross = (text: string): boolean => /^x$/i.test(text);

/** Yes or no, in words or marks; undefined where it is neither. */
export function yesOrNo(text: string, { cross }: { readonly cross?: "yes" | "no" }): boolean | undefined {
  if (isCross(text)) return cross && cross === "yes";
  const words = text.length > 40 ? "" : plain(text).replace(/[.!]$/, "");
  return yesWords.has(words) ? true : noWords.has(words) ? false : undefined;
}

/** What a cross means among the cells of a column: no beside ticks or a word for yes, yes beside a word for no or by itself. */
export function crossOf(texts: Iterable<string>): "yes" | "no" | undefined {
  let [yes, no] = [false, false];
  for (const text of texts) {
    const answer = yesOrNo(text, {});
    if (answer === true) yes = true;
    else if (answer === false) no = true;
  }
  return yes && no ? undefined : yes ? "no" : "yes";
}

const crosses: readonly Choice[] = [
  { answer: "yes", column: { cross: "yes" } },
  { answer: "no", column: { cross: "no" } },
];

/** Whether a part can be had; a number is how many there are. */
export const readAvailable: CellReader = (text, context) => {
  const answer = yesOrNo(text, context);
  if (answer !== undefined) return { set: { available: answer } };
  const choices = [{ answer: "yes" }, { answer: "no" }];
  if (isCross(text)) return { ask: { code: "cross-unclear", choices: crosses } };
  const [, digits, after] = text.length < 40 ? (/^[>+]? *(\d{1,6})\+?(.*)$/.exec(text) ?? []) : [];
  if (!digits) return { ask: { code: "yes-or-no", choices } };
  const guess = Number(digits) > 0;
  const rest = plain(after!.trim());
  return rest === "" || pieceWords.has(rest) || yesWords.has(rest)
    ? { set: { available: guess } }
    : { ask: { code: "yes-or-no", guess: guess ? "yes" : "no", choices } };
};
