import type { PartKind } from "../../stages/index.js";
import { joints, manners } from "./kind-words.js";
import { kindOf } from "./kinds.js";
import type { Ask } from "./meaning.js";
import { plain, setOf, wordsOf } from "./plain.js";

const general = "gear|gears|zahnrad|zahnräder|engrenage|engrenages|engranaje|engranajes|ギア|ギヤ|歯車|ترس|تروس";
let generals: ReadonlySet<string> | undefined;
/** "Gears" as the name of a category: the part's own name says which. */
const isGeneral = (text: string): boolean => (generals ??= setOf(general)).has(plain(text));

const otherWords =
  "other|others|misc|miscellaneous|sundry|sonstiges|andere|anderes|autre|autres|divers|otro|otros|otra|otras|varios|その他|أخرى|آخر";
const wheelWords = "wheel|wheels|rad|räder|roue|roues|rueda|ruedas|ホイール|車輪|عجلة|عجلات";
let others: ReadonlySet<string> | undefined;
let wheels: ReadonlySet<string> | undefined;

/** Whether a text says no more than that a part is something else. */
export const isOtherWord = (text: string): boolean => (others ??= setOf(otherWords)).has(plain(text));

let beside: ReadonlySet<string> | undefined;
let cuts: ReadonlySet<string> | undefined;

/**
 * Whether a text says no more than that a part is a wheel, which in many languages can be toothed, and how many teeth or what
 * pitch it has: "Roue 45 dents", "wheel 62T for the Limpet".
 */
export function isWheelWord(text: string): boolean {
  wheels ??= setOf(wheelWords);
  beside ??= setOf(manners);
  cuts ??= setOf(joints);
  const all = wordsOf(plain(text.slice(0, 300)));
  const end = all.findIndex((word, n) => n > 0 && cuts!.has(word));
  const words = end < 0 ? all : all.slice(0, end);
  return (
    words.some((word) => wheels!.has(word)) &&
    words.every((word) => wheels!.has(word) || beside!.has(word) || /^\d+$/.test(word))
  );
}

/** What a part is, by the words of its kind, its name, or the heading above; with what is asked where none says it plainly. */
export function kindIn(
  what: string,
  name: string,
  section: PartKind | undefined,
): { readonly is: PartKind; readonly ask?: Ask } {
  const ofWhat = what === "" ? undefined : kindOf(what);
  const ofName = name === "" ? undefined : kindOf(name);
  if (ofWhat?.sure) {
    const isFiner = ofName?.sure && (ofName.is === "pinion" || ofName.is === "spur") && isGeneral(what);
    return { is: isFiner ? ofName.is : ofWhat.is };
  }
  if (ofName?.sure) return { is: ofName.is };
  const perhaps = ofWhat ?? ofName;
  if (section && (!perhaps || perhaps.is === section)) return { is: section };
  if (!perhaps) return { is: "other", ask: { code: "kind-unknown" } };
  return { is: perhaps.is, ask: { code: "kind-unsure", guess: perhaps.is } };
}
