import { readdirSync, statSync } from "node:fs";
import { extname, isAbsolute, join, resolve } from "node:path";
import { globSync, isDynamicPattern } from "tinyglobby";
import { Refused, sentenceOf } from "./disk.js";
import type { Format } from "./read.js";

const formats: Readonly<Record<string, Format>> = {
  ".html": "html",
  ".htm": "html",
  ".md": "markdown",
  ".markdown": "markdown",
  ".mdx": "mdx",
};

/** The endings of the files that are looked at. */
const endings: readonly string[] = Object.keys(formats);

/** What a file is written in, by its ending. */
export const formatOf = (path: string): Format | undefined => formats[extname(path).toLowerCase()];

/** A file to look at, or what was asked for and cannot be had. */
export type FoundFile = { readonly path: string; readonly trouble?: string };

const skipped = (name: string): boolean => name === "node_modules" || name.startsWith(".");

/** The articles in a folder and in those inside, in the order of their names. Links to folders are not followed. */
function* inFolder(folder: string): Generator<FoundFile> {
  const folders = [folder];
  for (let one = folders.pop(); one !== undefined; one = folders.pop()) {
    const inner: string[] = [];
    try {
      const entries = readdirSync(one, { withFileTypes: true });
      for (const entry of entries.sort((a, b) => (a.name < b.name ? -1 : 1))) {
        const path = join(one, entry.name);
        if (entry.isDirectory()) {
          if (!skipped(entry.name)) inner.push(path);
        } else if (formatOf(entry.name) && !skipped(entry.name)) yield { path };
      }
    } catch (error) {
      yield { path: one, trouble: sentenceOf(error) };
    }
    folders.push(...inner.reverse());
  }
}

/** What a pattern matches. */
function matched(pattern: string): readonly string[] {
  const others = "node_modules";
  const paths = globSync(pattern, { expandDirectories: false, ignore: `**/${others}/**` });
  return paths
    .filter((path) => formatOf(path) && (pattern.includes(others) || !path.split("/").includes(others)))
    .map((path) => (isAbsolute(pattern) ? resolve(path) : path))
    .sort();
}

function* named(name: string): Generator<FoundFile> {
  const kind = statSync(name, { throwIfNoEntry: false });
  if (kind?.isDirectory()) yield* inFolder(name);
  else if (kind) {
    if (!formatOf(name)) throw new Refused(`is none of ${endings.join(", ")}`);
    yield { path: name };
  } else if (isDynamicPattern(name)) yield* matched(name).map((path) => ({ path }));
  else throw new Refused("is not there");
}

/** The files that are meant by names of files, of folders, and patterns, each once. */
export function* filesOf(names: readonly string[]): Generator<FoundFile> {
  const seen = new Set<string>();
  for (const name of names) {
    let any = false;
    try {
      for (const found of named(name)) {
        any = true;
        const key = resolve(found.path);
        if (!seen.has(key)) yield found;
        seen.add(key);
      }
      if (!any) yield { path: name, trouble: `leads to no ${endings.join(", ")}` };
    } catch (error) {
      yield { path: name, trouble: sentenceOf(error) };
    }
  }
}
