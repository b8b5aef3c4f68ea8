import type { PartKind } from "../../stages/index.js";
import type { CellContext, CellRead, CellReader, Choice } from "./meaning.js";
import { readNumber } from "./number.js";
import { plain, setOf } from "./plain.js";
import { readRatio } from "./ratio.js";
import { yesOrNo } from "./yes.js";

/** Words beside a count of teeth, and beside one of pieces, in the six languages. */
const toothWords = setOf(
  "t|z|th|teeth|tooth|zähne|zahn|zähnig|dents|dent|dientes|diente|links|link|glieder|maillons|eslabones|starts|start|gängig|gänge|gang|filets|entradas|歯|枚|丁|条|コマ|سن|أسنان|سنة",
);
const pieceWords = setOf(
  "x|pc|pcs|piece|pieces|off|no|pack|pack of|packs|pk|pairs|stk|stück|st|er|er pack|er packung|packung|pce|pces|pièces|lot|lot de|piezas|pza|pzas|ud|uds|unidades|paquete|個|個入|個入り|コ|ケ|本|本入り|枚|枚入り|組|セット|قطعة|قطع|حبة",
);
/** What stands between both counts of a set. */
const between = setOf("/|-|:|->|to|and|und|zu|auf|bis|a|sur|pour|por|con|対|と|から|على|إلى");
const most = 1_000_000;
const longest = 60;

/** Words around numbers: `15T/41T` is ["", "15", "t/", "41", "t"]. */
const piecesOf = (text: string): string[] =>
  text.length > longest
    ? []
    : plain(text)
        .split(/(\d[\d.,']*\d|\d)/)
        .map((piece, n) => (n % 2 ? piece : piece.replace(/[()=.\s]+/g, " ").trim()));

function wholeOf(text: string, from: number): number | undefined {
  const read = readNumber(text);
  const number = read ? Number("value" in read ? read.value : read.either[1]) : NaN;
  return number % 1 === 0 && number >= from && number <= most ? number : undefined;
}

/** A cell's one number; sure where the words around it are of the list. */
function countOf(text: string, words: ReadonlySet<string>, from: number) {
  const [before, number, after, more] = piecesOf(text);
  const count = number === undefined || more !== undefined ? undefined : wholeOf(number, from);
  const isKnown = (side = ""): boolean => side === "" || words.has(side.replace(/^-/, ""));
  return count === undefined ? undefined : { count, sure: before !== "-" && isKnown(before) && isKnown(after) };
}

/** Whether both counts of a kind are sold together. */
export const isTogether = (is: PartKind): boolean => is === "set" || is === "hub" || is === "planetary";

/** Both counts of a set as they are written: "20/41", "20 to 41", "20T/41T". */
export function pairOf(text: string): readonly [number, number] | undefined {
  const [before = "", first, middle = "", second, after = "", more] = piecesOf(text);
  if (first === undefined || second === undefined || more !== undefined) return undefined;
  const counts = [wholeOf(first, 1), wholeOf(second, 1)];
  const isSide = (side: string): boolean => side === "" || toothWords.has(side);
  const divider = middle.split(/([a-z]+| )/).filter((word) => word.trim() !== "" && !toothWords.has(word));
  const isDivided = between.has(divider.join("")) && isSide(before) && isSide(after);
  return isDivided && counts[0] !== undefined && counts[1] !== undefined ? [counts[0], counts[1]] : undefined;
}

/** The sun and the ring of three counts, where they are a planetary set's: the ring has the sun's teeth and twice a planet's. */
export function planetaryOf(text: string): readonly [number, number] | undefined {
  const pieces = piecesOf(text);
  const isDivided = pieces.length === 7 && pieces.every((piece, n) => n % 2 || /^[tz]?[-/:+]?$/.test(piece));
  if (!isDivided) return undefined;
  const [one = 0, two = 0, ring = 0] = [1, 3, 5].map((n) => wholeOf(pieces[n]!, 1) ?? 0).sort((a, b) => a - b);
  const suns = [one, two].filter((sun) => sun + 2 * (one + two - sun) === ring);
  return suns.length === 1 ? [suns[0]!, ring] : undefined;
}

/** The driver is written first, unless the column says otherwise or, which is asked about, the counts seem to. */
function readPair(pair: readonly [number, number], { order }: CellContext, is: PartKind): CellRead {
  const isSaid = order === "driver-driven" || order === "driven-driver";
  const isTurned = isSaid ? order === "driven-driver" : pair[0] > pair[1];
  const [driver, driven] = isTurned ? [pair[1], pair[0]] : pair;
  const guess = `${driver}/${driven}`;
  const written = isTurned ? "driven-driver" : "driver-driven";
  const choices: readonly Choice[] = [
    { answer: guess, column: { order: written } },
    { answer: `${driven}/${driver}`, column: { order: isTurned ? "driver-driven" : "driven-driver" } },
  ];
  if (!isTogether(is) && is !== "other") return { ask: { code: "pair-for-one" } };
  return {
    set: { driver, driven },
    ...(isTurned && !isSaid && { ask: { code: "pair-order", guess, choices } }),
  };
}

/** Teeth, links or starts; of what is sold together both counts, and of a box a ratio. */
export const readTeeth: CellReader = (text, context, is) => {
  const one = countOf(text, toothWords, 1);
  const pair = pairOf(text);
  if (is === "gearbox" && !(one?.sure && /[a-z]/i.test(text))) return readRatio(text, context, is);
  if (pair) return readPair(pair, context, is);
  const [sun, ring] = (is === "planetary" ? planetaryOf(text) : undefined) ?? [];
  if (sun) return { set: { driver: sun, driven: ring }, ask: { code: "count-unclear", guess: `${sun}/${ring}` } };
  if (!one) return { ask: { code: "count-unclear" } };
  return { set: { teeth: one.count }, ...(!one.sure && { ask: { code: "count-unclear", guess: `${one.count}` } }) };
};

const readCount =
  (
    field: "driver" | "driven" | "pack" | "pieces" | "owned",
    words: () => ReadonlySet<string>,
    from: number,
  ): CellReader =>
  (text) => {
    const one = countOf(text, words(), from);
    if (!one) return { ask: { code: "count-unclear" } };
    return { set: { [field]: one.count }, ...(!one.sure && { ask: { code: "count-unclear", guess: `${one.count}` } }) };
  };

export const readDriver = readCount("driver", () => toothWords, 1);
export const readDriven = readCount("driven", () => toothWords, 1);
export const readPack = readCount("pack", () => pieceWords, 1);
export const readPiecesHere = readCount("pieces", () => pieceWords, 1);
const readPieces = readCount("owned", () => pieceWords, 0);

/** Pieces owned. Yes is at least one: how many is asked. */
export const readOwned: CellReader = (text, context, is) => {
  const answer = yesOrNo(text, context);
  if (answer === undefined) return readPieces(text, context, is);
  return answer ? { set: { owned: 1 }, ask: { code: "how-many", guess: "1" } } : { set: { owned: 0 } };
};
