import { textOf } from "@meshwright/calc/parts";
import type { Notebook } from "./notebook.js";
import { notebookFrom, type Refused, refused, type WithNotebook } from "./read-notebook.js";

// A notebook goes into a file and comes back. What comes in may be anything: each kind of wrong has a sentence of its own,
// and nothing is opened half.

/** What goes into a file. */
export interface ExportChoice {
  readonly drivetrain: boolean;
  readonly post: boolean;
  readonly parts: boolean;
  readonly history: boolean;
}

export const usualExport: ExportChoice = { drivetrain: true, post: true, parts: true, history: false };

/** The text of a file that holds a notebook, or what was chosen of it. */
export function fileText(notebook: Notebook, choice: ExportChoice = usualExport): string {
  const {
    build,
    shelf,
    post,
    onlyText,
    sheets,
    bench,
    orders,
    runs,
    versions,
    days,
    assemblies,
    handed,
    log,
    ...rest
  } = notebook;
  const { parts, ...bare } = build ?? {};
  const written = {
    ...rest,
    ...(choice.drivetrain && build && { build: choice.parts ? build : bare, bench, runs, versions, handed }),
    ...(choice.parts && { shelf, assemblies, orders, sheets }),
    ...(choice.post && { post, onlyText }),
    ...(choice.history && { log, ...(choice.drivetrain && { days }) }),
  };
  return `${JSON.stringify(written, null, 2)}\n`;
}

/** What a file is called: letters and digits of the title. */
export const fileName = ({ title }: Notebook, ending = "json"): string =>
  `${
    title
      .toLowerCase()
      .replace(/[^\p{L}\p{N}]+/gu, "-")
      .replace(/^-|-$/g, "")
      .slice(0, 60) || "notebook"
  }.${ending}`;

/** What was in a file. */
export type Opened =
  | WithNotebook
  | { readonly kind: "sheet"; readonly text: string }
  | { readonly kind: "post"; readonly text: string }
  | Refused;

const mostBytes = 20e6;
const inMegabytes = (bytes: number): string => (bytes / 1e6).toFixed(bytes < 1e7 ? 1 : 0);

const signs: readonly (readonly [pattern: RegExp, what: string])[] = [
  [/^\x89PNG|^\xff\xd8\xff|^GIF8|^RIFF....WEBP|^BM|^....ftyp(heic|avif)/s, "a picture"],
  [/^%PDF/, "a PDF"],
  [/^PK\x03\x04/, "a packed file, such as a spreadsheet program’s own; save it as CSV first"],
  [/^\x1f\x8b|^7z|^Rar!/, "a packed file"],
];

/** A file as text, in whatever encoding it was written; or, in a sentence's words, what it is where it is plainly no text. */
function decoded(bytes: Uint8Array): { readonly text: string } | { readonly strange: string } {
  const head = String.fromCharCode(...bytes.subarray(0, 16));
  const [, what] = signs.find(([pattern]) => pattern.test(head)) ?? [];
  if (what) return { strange: what };
  const { text } = textOf(bytes);
  return text.slice(0, 2000).includes("\0") ? { strange: "no text" } : { text };
}

/**
 * A notebook as a database or another tab hands it over: its drivetrains are read again, as everything is that comes from
 * outside.
 *
 * @throws Error with a sentence where it cannot be read; what is kept stays as it is
 */
export function revived(data: Notebook): Notebook {
  const opened = notebookFrom(data, data.id);
  if (opened.kind === "notebook") return opened.notebook;
  throw new Error(opened.kind === "refused" ? opened.why : "This is no notebook.");
}

/** Why a file can be no sheet of parts, in a sentence; nothing where it may be one. */
export function noSheet(bytes: Uint8Array, size = bytes.length): string | undefined {
  if (size > mostBytes)
    return `This file has ${inMegabytes(size)} MB; a sheet of parts has a few at most. Nothing was read.`;
  const read = decoded(bytes);
  if ("strange" in read) return `This file is ${read.strange}, and no sheet of parts. Nothing was read.`;
  const text = read.text.trim();
  if (!text) return "This file is empty. Nothing was read.";
  const format = /^\{[^]{0,400}?"format"\s*:\s*"(meshwright-[\w-]+\/\d+)/.exec(text)?.[1];
  if (format)
    return `This file is a ${format.includes("notebook") ? "notebook" : "drivetrain"}, and no sheet of parts. “Notebooks”, then “Open a file”, opens it. Nothing was read.`;
  return undefined;
}

/** Whether text is written in Markdown: by the ending of its file's name, or by its signs where no paragraph is HTML's. */
const isMarkdown = (text: string, name: string): boolean =>
  /\.(md|mdx|markdown|mdown|mkd)$/i.test(name) ||
  (!/<(p|h[1-6]|article|section|div|html|table|ul|ol)\b/i.test(text) &&
    /^#{1,6} \S|^(---|\+\+\+)\r?\n[^]*?\n\1\s*$|^ {0,3}(```|~~~)|!?\[[^\]\n]*\]\([^)\s]+[^)]*\)|\*\*\S[^*\n]*\*\*/m.test(
      text,
    ));

/**
 * Reads whatever a file holds: a notebook, a drivetrain, a sheet of parts, a post; or says in one sentence what is wrong.
 *
 * @param name what the file is called, where that is known
 */
export function openFile(bytes: Uint8Array, id: string, name = ""): Opened {
  if (bytes.length === 0) return refused("This file is empty. Nothing was opened.");
  if (bytes.length > mostBytes)
    return refused(`This file has ${inMegabytes(bytes.length)} MB; a notebook has a few at most. Nothing was opened.`);
  const read = decoded(bytes);
  if ("strange" in read) return refused(`This file is ${read.strange}, and no notebook. Nothing was opened.`);
  const { text } = read;
  if (!text.trim()) return refused("This file is empty. Nothing was opened.");
  return openText(text, id, name);
}

/** The same for text that was pasted. */
export function openText(text: string, id: string, name = ""): Opened {
  const trimmed = text.trim();
  if (/^[{[]/.test(trimmed)) {
    let data: unknown;
    try {
      data = JSON.parse(trimmed);
    } catch (error) {
      return refused(
        `This looks like a notebook that was cut off or changed by hand: ${(error as Error).message}. Nothing was opened.`,
      );
    }
    return notebookFrom(data, id);
  }
  if (isMarkdown(trimmed, name))
    return refused(
      "This file is a post in Markdown; the notebook opens a post as HTML. Save the page that your blog makes of it, and open that. Nothing was opened.",
    );
  if (/<mw-[a-z]|<(p|h[1-6]|article|div|html)\b/i.test(trimmed)) return { kind: "post", text };
  if (/[,;\t]/.test(trimmed.split("\n", 3).join(""))) return { kind: "sheet", text };
  return refused("This is text, and neither a notebook, nor a table of parts, nor a post. Nothing was opened.");
}
