import type { Part } from "../drivetrain/index.js";
import { fill, pitchText } from "../languages/index.js";
import { needsOf, orderOf, type BuyLine, type Need, type OrderLine, type OrderList } from "../parts/index.js";
import type { Block, BlockRow, BlockTable } from "./block.js";
import { dateText, moneyText, needText, partName, partsOf, sumText } from "./part-text.js";
import { misfits, placeName } from "./places.js";
import type { Reporter } from "./speaker.js";

/** One line of the parts list: the stage, and what is fitted there. */
export interface SaidPart extends BlockRow {
  /** Whether it is the first line of its stage. */
  readonly first: boolean;
  readonly need: Need;
  readonly pitch: string;
  /** When its price was looked up. */
  readonly checked: string | undefined;
}

/** What `mw-parts-list` says. */
export interface SaidParts extends Block {
  readonly heads: readonly string[];
  readonly rows: readonly SaidPart[];
}

/** What a place is called where parts are listed; the document's own places have no label. */
function placeOf(speaker: Reporter, id: string): string {
  const name = placeName(speaker, id);
  return name === id ? ((speaker.reports.ownPlaces as Readonly<Record<string, string>>)[id] ?? name) : name;
}

/** What `mw-parts-list` says: every part of the build as it stands, by stage. */
export function sayParts(speaker: Reporter): SaidParts {
  const { evaluation, words, reports, locale } = speaker;
  const needs = needsOf(evaluation.build, partsOf(evaluation.build));
  const heads = [words.stage, reports.pieces, reports.part, reports.maker, reports.where];
  const rows = needs.map((need, n): SaidPart => {
    const { part } = need;
    const name = part ? partName(part) : fill(words.told, needText(need, speaker), reports.notListed);
    const checked = part?.price?.checked && dateText(part.price.checked, locale);
    const where = [part?.source, checked].filter(Boolean).join(" ");
    return {
      head: placeOf(speaker, need.stage),
      first: needs[n - 1]?.stage !== need.stage,
      need,
      pitch: part ? pitchText(part, reports.reasons) : "",
      checked,
      texts: [String(need.pieces), name, part?.maker ?? "–", where || "–"],
    };
  });
  return { heads, rows, tables: [{ caption: reports.partsByStage, heads, rows }], notes: [] };
}

/** One line of an order. */
export interface BuyRow extends BlockRow {
  readonly line: BuyLine;
  readonly checked: string | undefined;
}

/** What `mw-order-list` says. */
export interface SaidOrder extends Block {
  readonly order: OrderList;
  /** Whether anything is sold in packs: then there is a column for them. */
  readonly packed: boolean;
  readonly heads: readonly string[];
  readonly buy: readonly BuyRow[];
  readonly sum: string;
  readonly misfits: readonly string[];
  /** What is owned, what stays and what is left over, each with its head. */
  readonly rest: readonly (readonly [head: string, parts: readonly string[]])[];
  readonly missing: readonly string[];
  /** All of it as plain text, for whoever takes it to a shop. */
  readonly text: string;
}

const isPacked = ({ pack = 1 }: Part): boolean => pack > 1;
const pieceText = ({ part, pieces }: OrderLine): string =>
  pieces > 1 ? `${pieces} × ${partName(part)}` : partName(part);
const lineText = ({ part, pieces }: OrderLine): string =>
  `${pieces} × ${partName(part)}${part.maker ? `, ${part.maker}` : ""}`;

/**
 * What `mw-order-list` says: what a version of the build means to get.
 *
 * @param start the version that it is counted from; none: from nothing
 */
export function sayOrder(speaker: Reporter, start: Reporter | undefined): SaidOrder {
  const { evaluation, words, reports, locale } = speaker;
  const parts = partsOf(evaluation.build);
  const order = orderOf(start ? needsOf(start.evaluation.build, parts) : [], needsOf(evaluation.build, parts));
  const packed = order.buy.some(({ part }) => isPacked(part));
  const packs = ({ packs: count, part }: BuyLine): string =>
    isPacked(part) ? fill(reports.packs, count, part.pack!) : `${count}`;
  const cost = ({ cost: sum }: BuyLine): string =>
    sum ? moneyText(sum.amount, sum.currency, locale) : reports.noPrice;
  const where = ({ source, available }: Part): string =>
    [source ?? "–", available === false ? reports.notToBeHad : ""].filter(Boolean).join(" ");
  const heads = [reports.part, reports.pieces, ...(packed ? [reports.packsHead] : []), reports.price, reports.where];
  const buy = order.buy.map((line): BuyRow => ({
    head: partName(line.part),
    line,
    checked: line.part.price?.checked && dateText(line.part.price.checked, locale),
    texts: [String(line.pieces), ...(packed ? [packs(line)] : []), cost(line), where(line.part)],
  }));
  const sum = sumText(order, speaker, order.missing.length);
  const missing = order.missing.map((need) => {
    const what = needText(need, speaker);
    // The motor's place is called what stands there.
    if (need.stage in reports.ownPlaces) return what;
    return fill(words.told, placeOf(speaker, need.stage), need.pieces > 1 ? `${need.pieces} × ${what}` : what);
  });
  const rest = (
    [
      [reports.ownedAlready, order.owned],
      [reports.stays, order.stays],
      [reports.leftOver, order.left],
    ] as const
  ).filter(([, lines]) => lines.length);
  const wrong = misfits(speaker);
  const section = (head: string, lines: readonly string[]): string[] => (lines.length ? ["", head, ...lines] : []);
  const text = [
    evaluation.build.title ?? "",
    ...section(
      reports.toBuy,
      order.buy.map((line) =>
        [
          fill(words.told, lineText(line), [...(isPacked(line.part) ? [packs(line)] : []), cost(line)].join(", ")),
          line.part.source,
        ]
          .filter(Boolean)
          .join(", "),
      ),
    ),
    ...section(reports.sum, order.buy.length ? [sum] : []),
    ...wrong,
    ...rest.flatMap(([head, lines]) => section(head, lines.map(lineText))),
    ...section(reports.noPart, missing),
  ];
  const total: BlockRow = { head: reports.sum, kind: "total", texts: [sum] };
  const tables: BlockTable[] = buy.length ? [{ caption: reports.toBuy, heads, rows: [...buy, total] }] : [];
  const told = rest.map(([head, lines]) => [head, lines.map(pieceText)] as const);
  return {
    ...{ order, packed, heads, buy, sum, misfits: wrong, rest: told, missing, text: text.join("\n").trim(), tables },
    notes: [
      // What no part is named for is to be had as well.
      ...(buy.length || missing.length ? [] : [reports.nothingToBuy]),
      ...wrong,
      ...told.map(([head, names]) => `${fill(words.told, head, names.join("; "))}.`),
      ...(missing.length ? [`${fill(words.told, reports.noPart, missing.join("; "))}.`] : []),
    ],
  };
}
