import { readUnfinished } from "@meshwright/calc/document";
import type { Finding } from "@meshwright/calc/stages";
import { readAssembly } from "./assemblies.js";
import { emptyTitle, newNotebook, type Notebook, type PostNode } from "./notebook.js";
import { readShelf } from "./shelf.js";

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
  | { readonly kind: "notebook"; readonly notebook: Notebook; readonly findings: readonly Finding[] }
  | { readonly kind: "sheet"; readonly text: string }
  | { readonly kind: "post"; readonly text: string }
  | { readonly kind: "refused"; readonly why: string };

const refused = (why: string): Opened => ({ kind: "refused", why });

const mostBytes = 20e6;
const inMegabytes = (bytes: number): string => (bytes / 1e6).toFixed(bytes < 1e7 ? 1 : 0);

const signs: readonly (readonly [pattern: RegExp, what: string])[] = [
  [/^\x89PNG|^\xff\xd8\xff|^GIF8|^RIFF....WEBP|^BM|^....ftyp(heic|avif)/s, "a picture"],
  [/^%PDF/, "a PDF"],
  [/^PK\x03\x04/, "a packed file, such as a spreadsheet program’s own; save it as CSV first"],
  [/^\x1f\x8b|^7z|^Rar!/, "a packed file"],
];

/** What bytes are, if they are plainly no text. */
function strangeness(bytes: Uint8Array): string | undefined {
  const head = String.fromCharCode(...bytes.subarray(0, 16));
  const [, what] = signs.find(([pattern]) => pattern.test(head)) ?? [];
  if (what) return what;
  const isWide = (bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff);
  return !isWide && bytes.subarray(0, 2000).includes(0) ? "no text" : undefined;
}

type Data = Readonly<Record<string, unknown>>;
const isData = (value: unknown): value is Data => typeof value === "object" && value !== null && !Array.isArray(value);

const list = <One>(value: unknown, is: (one: Data) => boolean): readonly One[] | undefined =>
  Array.isArray(value) ? (value.filter((one) => isData(one) && is(one)) as unknown as readonly One[]) : undefined;
const isText = (value: unknown): value is string => typeof value === "string";
const optionalText = (value: unknown): boolean => value === undefined || isText(value);

function texts(value: unknown): Readonly<Record<string, string>> | undefined {
  return isData(value)
    ? Object.fromEntries(Object.entries(value).filter((entry): entry is [string, string] => isText(entry[1])))
    : undefined;
}

/** A node of a post, as deep as posts go; what is none is left out. */
function postFrom(value: unknown, depth = 0): PostNode | undefined {
  if (!isData(value) || !isText(value.type) || depth > 40) return undefined;
  const { type, attrs, content, marks, text } = value;
  return {
    type,
    ...(isData(attrs) && { attrs }),
    ...(Array.isArray(content) && {
      content: content.flatMap((one: unknown) => postFrom(one, depth + 1) ?? []),
    }),
    ...(Array.isArray(marks) && { marks: list<{ type: string }>(marks, ({ type: name }) => isText(name)) ?? [] }),
    ...(isText(text) && { text }),
  };
}

/** States of a drivetrain by their days; what cannot be read is left out. */
const dated = <One extends { date: string; build: unknown }>(value: unknown): readonly One[] | undefined =>
  list<One>(value, ({ date }) => isText(date))?.flatMap((one) => {
    const read = readUnfinished(one.build);
    return read.ok ? [{ ...one, build: read.build }] : [];
  });

/** A notebook out of data that may have been anywhere. A drivetrain that cannot be read refuses the whole. */
function notebookFrom(data: unknown, id: string): Opened {
  if (!isData(data)) return refused("This is no notebook: the file holds a bare value. Nothing was opened.");
  const format = data.format;
  if (isText(format) && format.startsWith("meshwright-build/")) {
    const reading = readUnfinished(data);
    if (!reading.ok) return refused(faultText(reading.findings));
    const title = reading.build.title ?? emptyTitle;
    return {
      kind: "notebook",
      notebook: { ...newNotebook(id, title), build: reading.build },
      findings: reading.findings,
    };
  }
  if (!isText(format) || !format.startsWith("meshwright-notebook/"))
    return refused(
      "This file holds data, and no notebook: it does not say “meshwright-notebook/1” or “meshwright-build/1” as its format. Nothing was opened.",
    );
  if (!/^meshwright-notebook\/1(\.\d+)?$/.test(format))
    return refused(
      `This notebook is of a newer format, ${format.slice(0, 40)}; this page reads meshwright-notebook/1. Open it with the page that wrote it. Nothing was opened.`,
    );
  const reading = data.build === undefined ? undefined : readUnfinished(data.build);
  if (reading && !reading.ok) return refused(faultText(reading.findings));
  const versions = dated<{ date: string; note: string; build: unknown }>(data.versions)?.filter(({ note }) =>
    isText(note),
  );
  const days = dated(data.days);
  const handed = list<{ key: string; at: string; title: string; build?: unknown; post?: unknown }>(
    data.handed,
    (one) => isText(one.key) && isText(one.at) && isText(one.title),
  )?.flatMap(({ key, at, title, build, post: written }) => {
    const read = build === undefined ? undefined : readUnfinished(build);
    const node = postFrom(written);
    return read && !read.ok
      ? []
      : [{ key, at, title, ...(read?.ok && { build: read.build }), ...(node && { post: node }) }];
  });
  const shelf = Array.isArray(data.shelf) ? readShelf(data.shelf) : undefined;
  if (shelf && !shelf.ok) return refused(faultText(shelf.findings));
  const post = postFrom(data.post);
  const [sheets, orders] = [isData(data.sheets) ? data.sheets : undefined, texts(data.orders)];
  const notebook = {
    ...newNotebook(
      isText(data.id) && data.id ? data.id.slice(0, 80) : id,
      isText(data.title) ? data.title.slice(0, 300) : emptyTitle,
    ),
    ...(reading && { build: reading.build }),
    ...(shelf?.build.parts && { shelf: shelf.build.parts }),
    ...(post && { post }),
    ...(Array.isArray(data.onlyText) && { onlyText: data.onlyText.filter(isText) }),
    ...(sheets && { sheets }),
    ...(orders && { orders }),
    ...kept(
      "bench",
      list(data.bench, ({ of, text, date }) => isText(of) && isText(text) && isText(date)),
    ),
    ...kept(
      "runs",
      list(data.runs, (run) => isText(run.date) && Object.values(run).every(optionalText)),
    ),
    ...kept("versions", versions),
    ...kept("days", days),
    ...kept("handed", handed),
    ...kept(
      "assemblies",
      Array.isArray(data.assemblies) ? data.assemblies.flatMap((one) => readAssembly(one) ?? []) : undefined,
    ),
    ...kept(
      "log",
      list(data.log, ({ at, what }) => isText(at) && isText(what)),
    ),
  } as Notebook;
  return { kind: "notebook", notebook, findings: reading?.findings ?? [] };
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

const kept = (key: string, value: readonly unknown[] | undefined): object => (value ? { [key]: value } : {});

/** Why a drivetrain could not be read: the first fault, with its place. */
function faultText(findings: readonly Finding[]): string {
  const errors = findings.filter(({ severity }) => severity === "error");
  const [first] = errors;
  const more = errors.length > 1 ? ` (and ${errors.length - 1} more)` : "";
  return `The drivetrain in this file cannot be read. ${first?.at ? `${first.at}: ` : ""}${first?.message ?? ""}${more} Nothing was opened.`;
}

/** Why a file can be no sheet of parts, in a sentence; nothing where it may be one. */
export function noSheet(bytes: Uint8Array, size = bytes.length): string | undefined {
  if (size > mostBytes)
    return `This file has ${inMegabytes(size)} MB; a sheet of parts has a few at most. Nothing was read.`;
  const strange = strangeness(bytes);
  if (strange) return `This file is ${strange}, and no sheet of parts. Nothing was read.`;
  const text = new TextDecoder("utf-8").decode(bytes).trim();
  if (!text) return "This file is empty. Nothing was read.";
  const format = /^\{[^]{0,400}?"format"\s*:\s*"(meshwright-[\w-]+\/\d+)/.exec(text)?.[1];
  if (format)
    return `This file is a ${format.includes("notebook") ? "notebook" : "drivetrain"}, and no sheet of parts. “Notebooks”, then “Open a file”, opens it. Nothing was read.`;
  return undefined;
}

/** Reads whatever a file holds: a notebook, a drivetrain, a sheet of parts, a post; or says in one sentence what is wrong. */
export function openFile(bytes: Uint8Array, id: string): Opened {
  if (bytes.length === 0) return refused("This file is empty. Nothing was opened.");
  if (bytes.length > mostBytes)
    return refused(`This file has ${inMegabytes(bytes.length)} MB; a notebook has a few at most. Nothing was opened.`);
  const strange = strangeness(bytes);
  if (strange) return refused(`This file is ${strange}, and no notebook. Nothing was opened.`);
  const text = new TextDecoder("utf-8").decode(bytes);
  if (!text.trim()) return refused("This file is empty. Nothing was opened.");
  return openText(text, id);
}

/** The same for text that was pasted. */
export function openText(text: string, id: string): Opened {
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
  if (/<mw-[a-z]|<(p|h[1-6]|article|div|html)\b/i.test(trimmed)) return { kind: "post", text };
  if (/[,;\t]/.test(trimmed.split("\n", 3).join(""))) return { kind: "sheet", text };
  return refused("This is text, and neither a notebook, nor a table of parts, nor a post. Nothing was opened.");
}
