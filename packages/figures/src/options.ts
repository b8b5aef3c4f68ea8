import { parseArgs } from "node:util";
import { nearest } from "./nearest.js";

export const help = `figures [options] FILE, FOLDER or PATTERN …

Compares the figures that stand in articles with what their builds come to.
Looks at .html, .htm, .md, .markdown and .mdx; in folders at all of them,
but for node_modules and what begins with a dot.

  --write     mends what is stale and can be shown to be whole; everything
              else in the file stays as it was, byte for byte
  --json      says it all as one JSON object
  --help      this text
  --version   the version
  --          what follows is no option

Exit status:
  0   no figure is stale, or all that were are mended
  1   a figure is stale, or was left for you to mend
  2   something could not be told, read or written, or was asked wrongly
`;

const known = {
  write: { type: "boolean" },
  json: { type: "boolean" },
  help: { type: "boolean" },
  version: { type: "boolean" },
} as const;

export type Options = { readonly names: readonly string[] } & { readonly [name in keyof typeof known]: boolean };

/** Reads a command line; what is wrong with it comes back as a sentence. */
export function optionsFrom(parameters: readonly string[]): Options | string {
  const { tokens, positionals: names } = parseArgs({
    args: [...parameters],
    options: known,
    strict: false,
    allowPositionals: true,
    tokens: true,
  });
  const given = new Set<string>();
  for (const token of tokens) {
    if (token.kind !== "option") continue;
    const { name, rawName, value } = token;
    if (!Object.hasOwn(known, name) || !rawName.startsWith("--")) {
      const all = Object.keys(known);
      const begun = all.filter((one) => one.startsWith(name));
      const near = begun.length ? begun : nearest(name, all);
      return `Unknown option ${rawName}; the nearest: ${near.map((one) => `--${one}`).join(", ")}.`;
    }
    if (value !== undefined) return `Option ${rawName} takes no value.`;
    given.add(name);
  }
  const options = {
    names,
    write: given.has("write"),
    json: given.has("json"),
    help: given.has("help"),
    version: given.has("version"),
  };
  return names.length || options.help || options.version ? options : "Which file? Expected at least one.";
}
