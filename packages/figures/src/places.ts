import {
  elementsIn,
  enclosing,
  hasInside,
  isElement,
  textsIn,
  type Element,
  type Holder,
  type Text,
} from "./article.js";

/** A place in a block's content that a figure may stand in: a table's cell, or a line behind its head. */
export interface Place {
  readonly element: Element;
  /** The heads that the place bears: of its row, of its column, of its line. */
  readonly heads: readonly string[];
  /** What its table is called. */
  readonly group?: string | undefined;
  readonly texts: readonly Text[];
  /** Its number among the places of its row, and how many those are; where no heads tell the columns apart. */
  readonly inRow?: readonly [number: number, of: number] | undefined;
}

/** A name as heads are compared: "Gearbox" begins a row as well as "gearbox". */
export const headOf = (text: string): string => text.replace(/\s+/g, " ").trim().toLowerCase();

/** What the figures of a block are called, and what they look like. */
export interface Known {
  /** Whether a head, as heads are compared, may stand at the place of one of them. */
  readonly isHead: (head: string) => boolean;
  /** Whether a head is a name of one of them, and not only of the table that it stands in. */
  readonly isName: (head: string) => boolean;
  /** Whether a text is nothing but one number with a point, or two, with words that stand beside the block's figures. */
  readonly isFigure: (text: string) => boolean;
}

type Read = (element: Element) => readonly Text[];

const textIn = (texts: readonly Text[]): string => texts.map(({ value }) => value).join("");
const headIn = (texts: readonly Text[]): string => headOf(textIn(texts));
const childrenOf = (element: Element): readonly Element[] => element.children.filter(isElement);

const isCell = ({ tag }: Element): boolean => tag === "td" || tag === "th";

/** Whether a cell stands in one row and one column. HTML: no columns are one, no rows are all that follow. */
const isSingle = ({ attributes: { colspan = "", rowspan = "" } }: Element): boolean =>
  /^0*1?$/.test(colspan.trim()) && /^(0*1)?$/.test(rowspan.trim());

/** The places of a table, and what names them. */
function placesOfTable(table: Element, read: Read, heads: Set<Element>, known: Known): readonly Place[] {
  const inTable = [...elementsIn(table)].filter((one) => enclosing(one, ({ tag }) => tag === "table") === table);
  const rows = inTable.filter(({ tag }) => tag === "tr").map((row) => childrenOf(row).filter(isCell));
  // Cells over several rows or columns leave no others where they seem to stand.
  if (!rows.flat().every(isSingle)) return [];
  const caption = inTable.find(({ tag }) => tag === "caption");
  const [first = []] = rows;
  const isHead = ({ tag, parent }: Element): boolean =>
    tag === "th" || (isElement(parent) && isElement(parent.parent!) && parent.parent.tag === "thead");
  // One head alone names a column where every row has one cell: above longer rows it is a heading.
  const isColumned = first.length > 1 || rows.every(({ length }) => length === 1);
  const columns = isColumned && first.every(isHead) ? first : undefined;
  const nameOf = (one: Element | undefined): string => (one ? headIn(read(one)) : "");
  // In one row alone, under names of figures only, the first cell is a figure like the others: there is nothing that it could name.
  const isOwn = (cell: Element): boolean => {
    const text = textIn(read(cell));
    return cell.tag === "td" && known.isFigure(text) && !known.isHead(headOf(text));
  };
  const isBare =
    rows.length === 2 &&
    columns?.every((one) => known.isName(nameOf(one))) === true &&
    rows[1]!.length === columns.length &&
    rows[1]!.every(isOwn);
  for (const one of [...(columns ?? []), ...(caption ? [caption] : [])]) heads.add(one);
  return rows.slice(columns ? 1 : 0).flatMap((cells) => {
    const [head] = cells;
    if (head && !isBare) heads.add(head);
    return cells.slice(isBare ? 0 : 1).map((element, n): Place => {
      const column = columns && nameOf(columns[isBare ? n : n + 1]);
      const own = [...(isBare ? [] : [nameOf(head)]), ...(column === undefined ? [] : [column])];
      const group = caption && headIn(read(caption));
      const inRow = columns ? undefined : ([n, cells.length - 1] as const);
      return { element, heads: own, group, texts: read(element), inRow };
    });
  });
}

/** "Front: 44.30": the head before the colon, and what stands behind it. */
function atColon(text: Text): { readonly head: string; readonly behind: Text } | undefined {
  const { value, range } = text;
  const colon = value.indexOf(":");
  if (colon < 0) return undefined;
  const [lead, rest] = [value.length - value.trimStart().length, value.slice(colon + 1)];
  const from = colon + 1 - lead + rest.length - rest.trimStart().length;
  // Where a character is written otherwise than it reads, the parts of the line have no places of their own.
  const plain = range && range[1] - range[0] === value.trim().length && rest.trim();
  const behind: Text = {
    ...text,
    value: rest,
    range: plain ? [range[0] + from, range[0] + from + rest.trim().length] : undefined,
  };
  return { head: headOf(value.slice(0, colon)), behind };
}

/** The same where nothing says that it is a line: a name of ours, and a figure and no more behind it. */
function placeOfText(text: Text, known: Known): Place | undefined {
  const { head, behind } = atColon(text) ?? {};
  return head !== undefined && behind && known.isName(head) && known.isFigure(behind.value)
    ? { element: text.parent as Element, heads: [head], texts: [behind] }
    : undefined;
}

/** The terms of descriptions, each list looked through once: none where several share them, for nothing tells then which is meant. */
class Terms {
  readonly #lists = new Map<Holder, ReadonlyMap<Element, Element | undefined>>();

  of(description: Element, heads: Set<Element>): Element | undefined {
    let list = this.#lists.get(description.parent);
    if (!list) {
      const found = new Map<Element, Element | undefined>();
      let terms: Element[] = [];
      let isOpen = false;
      for (const one of description.parent.children.filter(isElement)) {
        if (one.tag === "dt") terms = isOpen ? [...terms, one] : [one];
        isOpen = one.tag === "dt";
        if (one.tag !== "dd") continue;
        if (terms.length) heads.add(terms.at(-1)!);
        found.set(one, terms.length === 1 ? terms[0] : undefined);
      }
      this.#lists.set(description.parent, (list = found));
    }
    return list.get(description);
  }
}

/** "Front: 44.30" in a list, or what stands behind a term. */
function placeOfLine(element: Element, read: Read, heads: Set<Element>, terms: Terms): Place | undefined {
  const texts = read(element);
  if (element.tag === "dd") {
    const term = terms.of(element, heads);
    return term && { element, heads: [headIn(read(term))], texts };
  }
  const [first, ...more] = texts.filter(({ value }) => value.trim());
  const split = first && atColon(first);
  return split && { element, heads: [split.head], texts: [split.behind, ...more] };
}

/**
 * The places of a block's content, and the texts that have none. Heads are neither.
 *
 * @param without elements whose content is not the block's own
 */
export function placesIn(
  block: Element,
  without: (element: Element) => boolean,
  known: Known,
): { readonly places: readonly Place[]; readonly loose: readonly Text[]; readonly inHeads: readonly Text[] } {
  const read: Read = (element) => [...textsIn(element, without)];
  const inner = [...elementsIn(block, without)];
  const heads = new Set<Element>();
  const terms = new Terms();
  const tables = inner.filter(({ tag }) => tag === "table");
  const lines = inner.filter(
    (one) => (one.tag === "li" || one.tag === "dd") && !hasInside(one, ({ tag }) => /^(table|li|dd)$/.test(tag)),
  );
  const places = [
    ...tables.flatMap((table) => placesOfTable(table, read, heads, known)),
    ...lines.flatMap((line) => placeOfLine(line, read, heads, terms) ?? []),
  ];
  const named = new Set([...heads, ...places.map(({ element }) => element)]);
  const others = read(block).filter((text) => !enclosing(text, (one) => named.has(one)));
  const told = others.map((text) => placeOfText(text, known));
  const times = new Map<string, number>();
  for (const place of told) if (place) times.set(place.heads[0]!, (times.get(place.heads[0]!) ?? 0) + 1);
  // What two lines are called says of neither which figure it is.
  const lone = told.map((place) => (place && times.get(place.heads[0]!) === 1 ? place : undefined));
  places.push(...lone.flatMap((place) => place ?? []));
  const loose = others.filter((_, n) => !lone[n]);
  // A line alone is a place without heads.
  if (!tables.length && !lines.length && !places.length)
    return { places: [{ element: block, heads: [], texts: loose }], loose: [], inHeads: [] };
  return { places, loose, inHeads: [...heads].flatMap(read) };
}
