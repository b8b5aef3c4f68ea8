import { readUnfinished } from "@meshwright/calc/document";
import type { Build } from "@meshwright/calc/drivetrain";
import { stageShapes, type Finding } from "@meshwright/calc/stages";
import { emptyTitle, newNotebook, type Notebook, type PostNode } from "./notebook.js";
import { readShelf } from "./shelf.js";

// A notebook out of data that may have been anywhere. A drivetrain or a shelf that cannot be read refuses the whole; of all
// else what cannot be read is left out, and is told with its place.

/** A notebook that was read, what is odd in its drivetrain, and a sentence for each thing that was left out. */
export interface WithNotebook {
  readonly kind: "notebook";
  readonly notebook: Notebook;
  readonly findings: readonly Finding[];
  readonly left: readonly string[];
}

export interface Refused {
  readonly kind: "refused";
  readonly why: string;
}

export const refused = (why: string): Refused => ({ kind: "refused", why });

type Data = Readonly<Record<string, unknown>>;
const isData = (value: unknown): value is Data => typeof value === "object" && value !== null && !Array.isArray(value);
const isText = (value: unknown): value is string => typeof value === "string";

const shortest = (text: string): string => (text.length > 60 ? `${text.slice(0, 60)} …` : text);

/** Reads fields of a notebook, and notes what it leaves out. */
class Reader {
  readonly left: string[] = [];

  leave(at: string, found: unknown, expected: string): undefined {
    const shown = found === undefined ? "nothing" : shortest(JSON.stringify(found));
    this.left.push(`${at}: found ${shown}, expected ${expected}.`);
  }

  text(value: unknown, at: string): string | undefined {
    return isText(value) ? value : this.leave(at, value, "text");
  }

  list<One>(value: unknown, at: string, read: (one: unknown, at: string) => One | undefined): One[] | undefined {
    if (value === undefined) return undefined;
    if (!Array.isArray(value)) return this.leave(at, value, "a list");
    return value.flatMap((one: unknown, n) => read(one, `${at}/${n}`) ?? []);
  }

  data(value: unknown, at: string): Data | undefined {
    if (value === undefined) return undefined;
    return isData(value) ? value : this.leave(at, value, "an object");
  }

  /** An entry whose named fields are text. */
  entry(one: unknown, at: string, texts: readonly string[]): Data | undefined {
    if (!isData(one)) return this.leave(at, one, "an entry with its fields");
    const odd = texts.find((name) => !isText(one[name]));
    return odd === undefined ? one : this.leave(`${at}/${odd}`, one[odd], "text");
  }

  /** Entries of text by their names. */
  texts(value: unknown, at: string): Readonly<Record<string, string>> | undefined {
    const data = this.data(value, at);
    if (!data) return undefined;
    const read = Object.entries(data).flatMap(([key, one]) => {
      const text = this.text(one, `${at}/${key}`);
      return text === undefined ? [] : [[key, text] as const];
    });
    return Object.fromEntries(read);
  }

  build(value: unknown, at: string): Build | undefined {
    const reading = readUnfinished(value);
    if (reading.ok) return reading.build;
    const { at: place = "", message = "" } = reading.findings.find(({ severity }) => severity === "error") ?? {};
    this.left.push(`${at}${place}: ${message}`);
    return undefined;
  }

  /** A node of a post, as deep as posts go. */
  node(value: unknown, at: string, depth = 0): PostNode | undefined {
    if (!isData(value)) return this.leave(at, value, "a piece of a post, with its type");
    const { type, attrs, content, marks, text } = value;
    if (!isText(type)) return this.leave(`${at}/type`, type, "text");
    if (depth > 400) return this.leave(at, type, "a piece that lies less deep in others");
    const inner = this.list(content, `${at}/content`, (one, place) => this.node(one, place, depth + 1));
    const read = this.list(marks, `${at}/marks`, (one, place) => this.entry(one, place, ["type"]));
    return {
      type,
      ...(isData(attrs) && { attrs }),
      ...(inner && { content: inner }),
      ...(read && { marks: read as unknown as readonly { type: string }[] }),
      ...(isText(text) && { text }),
    };
  }

  /** An entry with a drivetrain of its own. */
  dated(one: unknown, at: string, texts: readonly string[]): Data | undefined {
    const entry = this.entry(one, at, texts);
    const build = entry && this.build(entry.build, `${at}/build`);
    return build && { ...entry, build };
  }

  run(one: unknown, at: string): Data | undefined {
    if (!isData(one)) return this.leave(at, one, "an entry with its fields");
    // A number is what would have been typed.
    const said = Object.entries(one).map(
      ([key, value]) => [key, Number.isFinite(value) ? String(value) : value] as const,
    );
    const odd = said.find(([, value]) => value !== undefined && !isText(value));
    if (odd) return this.leave(`${at}/${odd[0]}`, odd[1], "text");
    return this.entry(Object.fromEntries(said), at, ["date"]);
  }

  assembly(one: unknown, at: string): Data | undefined {
    const entry = this.entry(one, at, ["name", "date"]);
    if (!entry) return undefined;
    const { name, date, axle } = entry;
    const reading = readUnfinished({ format: "meshwright-build/1", stages: [], outputs: [axle] });
    if (reading.ok) return { name, date, axle: reading.build.outputs[0]! };
    this.left.push(`${at}/axle: ${reading.findings.find(({ severity }) => severity === "error")?.message ?? ""}`);
    return undefined;
  }

  handed(one: unknown, at: string): Data | undefined {
    const entry = this.entry(one, at, ["key", "at", "title"]);
    if (!entry) return undefined;
    const { key, title } = entry;
    const build = entry.build === undefined ? undefined : this.build(entry.build, `${at}/build`);
    if (entry.build !== undefined && !build) return undefined;
    const post = entry.post === undefined ? undefined : this.node(entry.post, `${at}/post`);
    return { key, at: entry.at, title, ...(build && { build }), ...(post && { post }) };
  }
}

/** How each field of a notebook is read; what gives nothing is left out. */
const fields: Readonly<Record<string, (reader: Reader, value: unknown, at: string) => unknown>> = {
  post: (reader, value, at) => reader.node(value, at),
  onlyText: (reader, value, at) => reader.list(value, at, (one, place) => reader.text(one, place)),
  sheets: (reader, value, at) => reader.data(value, at),
  orders: (reader, value, at) => reader.texts(value, at),
  bench: (reader, value, at) =>
    reader.list(value, at, (one, place) => {
      const note = reader.entry(one, place, ["of", "text", "date"]);
      return note && { ...note, with: isData(note.with) ? note.with : {} };
    }),
  runs: (reader, value, at) => reader.list(value, at, (one, place) => reader.run(one, place)),
  versions: (reader, value, at) => reader.list(value, at, (one, place) => reader.dated(one, place, ["date", "note"])),
  days: (reader, value, at) => reader.list(value, at, (one, place) => reader.dated(one, place, ["date"])),
  handed: (reader, value, at) => reader.list(value, at, (one, place) => reader.handed(one, place)),
  assemblies: (reader, value, at) => reader.list(value, at, (one, place) => reader.assembly(one, place)),
  log: (reader, value, at) => reader.list(value, at, (one, place) => reader.entry(one, place, ["at", "what"])),
};

/** Read before the others, or about the file itself. */
const others: ReadonlySet<string> = new Set(["format", "id", "title", "build", "shelf", "uses"]);

/** What a notebook says that it uses, and this page does not know. */
const strangeUse = (uses: unknown): string | undefined =>
  Array.isArray(uses) ? uses.filter(isText).find((use) => !Object.hasOwn(stageShapes, use)) : undefined;

/** Why a format is not read; nothing where it is. */
function formatFault(format: string, uses: unknown): string | undefined {
  const [, major, minor] = /^meshwright-notebook\/(\d{1,6})(?:\.(\d{1,6}))?$/.exec(format) ?? [];
  const named = format.slice(0, 40);
  if (major === "1") {
    const strange = Number(minor ?? 0) > 0 ? strangeUse(uses) : undefined;
    return strange === undefined
      ? undefined
      : `This notebook is of a newer format, ${named}, and uses “${shortest(strange)}”, which this page does not know. Open it with the page that wrote it. Nothing was opened.`;
  }
  const isNewer = Number(major) > 1;
  return `This notebook is of ${isNewer ? "a newer" : "another"} format${isNewer ? "," : ""} ${named}; this page reads meshwright-notebook/1. Open it with the page that wrote it. Nothing was opened.`;
}

/** Reads a notebook, or a drivetrain alone. */
export function notebookFrom(data: unknown, id: string): WithNotebook | Refused {
  if (!isData(data)) return refused("This is no notebook: the file holds a bare value. Nothing was opened.");
  const { format } = data;
  if (isText(format) && format.startsWith("meshwright-build/")) {
    const reading = readUnfinished(data);
    if (!reading.ok) return refused(faultText(reading.findings));
    const title = reading.build.title ?? emptyTitle;
    const notebook = { ...newNotebook(id, title), build: reading.build };
    return { kind: "notebook", notebook, findings: reading.findings, left: [] };
  }
  if (!isText(format) || !format.startsWith("meshwright-notebook/"))
    return refused(
      "This file holds data, and no notebook: it does not say “meshwright-notebook/1” or “meshwright-build/1” as its format. Nothing was opened.",
    );
  const fault = formatFault(format, data.uses);
  if (fault) return refused(fault);
  const reading = data.build === undefined ? undefined : readUnfinished(data.build);
  if (reading && !reading.ok) return refused(faultText(reading.findings));
  const shelf = Array.isArray(data.shelf) ? readShelf(data.shelf) : undefined;
  if (shelf && !shelf.ok) return refused(faultText(shelf.findings));
  const reader = new Reader();
  const title = data.title === undefined ? undefined : reader.text(data.title, "/title");
  if (data.shelf !== undefined && !shelf) reader.leave("/shelf", data.shelf, "a list");
  for (const key of Object.keys(data))
    if (!others.has(key) && !Object.hasOwn(fields, key))
      reader.left.push(`/${shortest(key)}: this page does not know “${shortest(key)}”.`);
  const read = Object.entries(fields).flatMap(([key, field]) => {
    const value = data[key] === undefined ? undefined : field(reader, data[key], `/${key}`);
    return value === undefined ? [] : [[key, value] as const];
  });
  const notebook = {
    ...newNotebook(isText(data.id) && data.id ? data.id.slice(0, 80) : id, title?.slice(0, 300) ?? emptyTitle),
    ...(reading && { build: reading.build }),
    ...(shelf?.build.parts && { shelf: shelf.build.parts }),
    ...Object.fromEntries(read),
  } as Notebook;
  return { kind: "notebook", notebook, findings: reading?.findings ?? [], left: reader.left };
}

/** Why a drivetrain could not be read: the first fault, with its place. */
function faultText(findings: readonly Finding[]): string {
  const errors = findings.filter(({ severity }) => severity === "error");
  const [first] = errors;
  const more = errors.length > 1 ? ` (and ${errors.length - 1} more)` : "";
  return `The drivetrain in this file cannot be read. ${first?.at ? `${first.at}: ` : ""}${first?.message ?? ""}${more} Nothing was opened.`;
}
