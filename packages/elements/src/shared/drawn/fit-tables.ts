import { paperWidth, whenPrinted } from "./paper.js";

const waiting = new Set<HTMLTableElement>();
let sizes: ResizeObserver | undefined;
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

/** What leaves the page is told of once more, as having no size: nothing is held for longer. */
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
  watchPaper();
  shown.add(table);
}

/**
 * Lets the tables below a root be what they have room for: as they are, with lines that wrap, or as lists, each cell with what it
 * stands under. Looks again whenever their frames have another width.
 */
export function fitTables(root: ParentNode): void {
  // Where there is no layout there is nothing to fit.
  if (!globalThis.ResizeObserver) return;
  for (const table of root.querySelectorAll("table")) {
    // What a frame holds is asked of the frame: a browser may forget what was noted about one that has left the page.
    sizes ??= new ResizeObserver((entries) => {
      for (const { target } of entries)
        for (const held of target.children) if (held instanceof HTMLTableElement) soon(held);
    });
    const frame = frameOf(table);
    soon(table);
    if (watched.has(frame)) continue;
    watched.add(frame);
    sizes.observe(frame);
  }
}
