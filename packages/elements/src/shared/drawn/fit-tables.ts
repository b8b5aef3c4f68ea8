import { paperWidth, whenPrinted } from "./paper.js";

const waiting = new Set<HTMLTableElement>();
const watched = new WeakSet<Element>();

const frameOf = (table: HTMLTableElement): HTMLElement => table.parentElement!;
/** Whether a table is wider than what it stands in. */
const isWide = (table: HTMLTableElement): boolean => table.offsetWidth > frameOf(table).clientWidth + 1;

/** What each cell would stand under, written at the cell: a list has no columns. */
function label(table: HTMLTableElement): void {
  const heads = [...(table.tHead?.rows[0]?.cells ?? [])].map((cell) => cell.textContent!.replace(/\s+/g, " ").trim());
  for (const body of table.tBodies)
    for (const row of body.rows) {
      let column = 0;
      for (const cell of row.cells) {
        const head = cell.localName === "td" && cell.colSpan === 1 ? heads[column] : undefined;
        if (head) cell.dataset.head = head;
        else delete cell.dataset.head;
        column += cell.colSpan;
      }
    }
}

/** Tables that may be printed. */
const shown = new Set<HTMLTableElement>();
let isWatching = false;
function watchPaper(): void {
  if (!isWatching) whenPrinted(fitToPaper);
  isWatching = true;
}

/** Nothing is held for longer than it stands in the page. */
function forget(): void {
  for (const table of shown) if (!table.isConnected) shown.delete(table);
}

/** Once a frame for all tables together: each alone would lay the page out anew. */
function fit(): void {
  const tables = [...waiting].filter((table) => table.isConnected);
  waiting.clear();
  forget();
  for (const { classList } of tables) classList.remove("wraps", "list");
  const wide = tables.filter(isWide);
  // What is taken by its row is read as cards rather than with broken lines.
  for (const { classList } of wide) classList.add(classList.contains("cards") ? "list" : "wraps");
  const lists = wide.filter((table) => table.classList.contains("list") || isWide(table));
  for (const table of lists) {
    table.classList.remove("wraps");
    table.classList.add("list");
    label(table);
  }
}

/** Before it is printed a table is fitted to the narrowest paper; what is made for paper has been already. */
function fitToPaper(isOnPaper: boolean): void {
  forget();
  for (const table of shown) {
    if (table.closest(".card")) continue;
    frameOf(table).style.maxWidth = isOnPaper ? `${paperWidth}px` : "";
    waiting.add(table);
  }
  fit();
  for (const table of shown) frameOf(table).style.maxWidth = "";
}

function soon(table: HTMLTableElement): void {
  if (!waiting.size) requestAnimationFrame(fit);
  waiting.add(table);
}

const isPlain = ({ classList }: HTMLTableElement): boolean =>
  !["wraps", "list"].some((name) => classList.contains(name));
/** How wide a table and its frame were when sizes were last told. */
const widths = new WeakMap<HTMLTableElement, string>();

/** Sizes are told when the page has been laid out: what is asked here costs nothing. What leaves the page has none. */
function sized(table: HTMLTableElement): void {
  if (!table.isConnected) return forget();
  const now = `${table.offsetWidth} ${frameOf(table).clientWidth}`;
  if (widths.get(table) === now) return;
  widths.set(table, now);
  if (!isPlain(table) || isWide(table)) soon(table);
}

let sizes: ResizeObserver | undefined;
function told(entries: readonly ResizeObserverEntry[]): void {
  // What a frame holds is asked of the frame: a browser may forget what was noted about one that has left the page.
  for (const { target } of entries)
    for (const held of [target, ...target.children]) if (held instanceof HTMLTableElement) sized(held);
}

function watch(element: Element): boolean {
  if (watched.has(element)) return false;
  watched.add(element);
  (sizes ??= new ResizeObserver(told)).observe(element);
  return true;
}

/**
 * Lets the tables below a root be what they have room for: as they are, with lines that wrap, or as lists, each cell with what it
 * stands under. Looks again whenever they or their frames have another width.
 */
export function fitTables(root: ParentNode): void {
  // Where there is no layout there is nothing to fit.
  if (!globalThis.ResizeObserver) return;
  for (const table of root.querySelectorAll("table")) {
    watchPaper();
    shown.add(table);
    watch(frameOf(table));
    // One that is as it is meant to be grows where it has no room any more, and is heard of then.
    if (watch(table) || !isPlain(table)) soon(table);
  }
}
