import { elementsIn, enclosing, hasInside, isElement, textsIn, type Element, type Text } from "./article.js";

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

type Read = (element: Element) => readonly Text[];

const headIn = (texts: readonly Text[]): string => headOf(texts.map(({ value }) => value).join(""));
const childrenOf = (element: Element): readonly Element[] => element.children.filter(isElement);

const isCell = ({ tag }: Element): boolean => tag === "td" || tag === "th";

/** Whether a cell stands in one row and one column. HTML: no columns are one, no rows are all that follow. */
const isSingle = ({ attributes: { colspan = "", rowspan = "" } }: Element): boolean =>
  /^0*1?$/.test(colspan.trim()) && /^(0*1)?$/.test(rowspan.trim());

/** The places of a table, and what names them. */
function placesOfTable(table: Element, read: Read, heads: Set<Element>): readonly Place[] {
  const inTable = [...elementsIn(table)].filter((one) => enclosing(one, ({ tag }) => tag === "table") === table);
  const rows = inTable.filter(({ tag }) => tag === "tr").map((row) => childrenOf(row).filter(isCell));
  // Cells over several rows or columns leave no others where they seem to stand.
  if (!rows.flat().every(isSingle)) return [];
  const caption = inTable.find(({ tag }) => tag === "caption");
  const [first = []] = rows;
  const isHead = ({ tag, parent }: Element): boolean =>
    tag === "th" || (isElement(parent) && isElement(parent.parent!) && parent.parent.tag === "thead");
  const columns = first.length > 1 && first.every(isHead) ? first : undefined;
  for (const one of [...(columns ?? []), ...rows.flatMap(([head]) => head ?? []), ...(caption ? [caption] : [])])
    heads.add(one);
  return rows.slice(columns ? 1 : 0).flatMap(([head, ...cells]) =>
    cells.map((element, n): Place => {
      const named = [head!, ...(columns ? [columns[n + 1]] : [])].map((one) => (one ? headIn(read(one)) : ""));
      const group = caption && headIn(read(caption));
      return { element, heads: named, group, texts: read(element), inRow: columns ? undefined : [n, cells.length] };
    }),
  );
}

/** "Front: 44.30" in a list, or what stands behind a term. */
function placeOfLine(element: Element, read: Read, heads: Set<Element>): Place | undefined {
  const texts = read(element);
  if (element.tag === "dd") {
    const before = childrenOf(element.parent as Element).filter(
      ({ tag, order }) => tag === "dt" && order < element.order,
    );
    const term = before.at(-1);
    if (!term) return undefined;
    heads.add(term);
    return { element, heads: [headIn(read(term))], texts };
  }
  const [first, ...more] = texts.filter(({ value }) => value.trim());
  const colon = first ? first.value.indexOf(":") : -1;
  if (!first || colon < 0) return undefined;
  const { value, range } = first;
  const [lead, rest] = [value.length - value.trimStart().length, value.slice(colon + 1)];
  const from = colon + 1 - lead + rest.length - rest.trimStart().length;
  // Where a character is written otherwise than it reads, the parts of the line have no places of their own.
  const plain = range && range[1] - range[0] === value.trim().length && rest.trim();
  const figures: Text = {
    ...first,
    value: rest,
    range: plain ? [range[0] + from, range[0] + from + rest.trim().length] : undefined,
  };
  return { element, heads: [headOf(value.slice(0, colon))], texts: [figures, ...more] };
}

/**
 * The places of a block's content, and the texts that have none. Heads are neither.
 *
 * @param without elements whose content is not the block's own
 */
export function placesIn(
  block: Element,
  without: (element: Element) => boolean,
): { readonly places: readonly Place[]; readonly loose: readonly Text[] } {
  const read: Read = (element) => [...textsIn(element, without)];
  const inner = [...elementsIn(block, without)];
  const heads = new Set<Element>();
  const tables = inner.filter(({ tag }) => tag === "table");
  const lines = inner.filter(
    (one) => (one.tag === "li" || one.tag === "dd") && !hasInside(one, ({ tag }) => /^(table|li|dd)$/.test(tag)),
  );
  const places = [
    ...tables.flatMap((table) => placesOfTable(table, read, heads)),
    ...lines.flatMap((line) => placeOfLine(line, read, heads) ?? []),
  ];
  // A line alone is a place without heads.
  if (!tables.length && !lines.length)
    return { places: [{ element: block, heads: [], texts: read(block) }], loose: [] };
  const named = new Set([...heads, ...places.map(({ element }) => element)]);
  return { places, loose: read(block).filter((text) => !enclosing(text, (one) => named.has(one))) };
}
