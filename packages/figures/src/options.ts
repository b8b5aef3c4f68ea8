import { parseArgs } from "node:util";
import { nearestTo } from "./expected.js";
import { systemNames, type SystemName } from "./systems.js";

export const help = `figures [options] FILE, FOLDER or PATTERN …

Compares the figures that stand in articles with what their builds come to.
Looks at .html, .htm, .md, .markdown and .mdx; in folders at all of them,
but for node_modules and what begins with a dot.

  --write     mends what is stale and can be shown to be whole; everything
              else in the file stays as it was, byte for byte
  --json      says it all as one JSON object
  --for NAME  warns of what a system would not take as it is written:
              ${systemNames.slice(0, 6).join(", ")},
              ${systemNames.slice(6).join(", ")}
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
  for: { type: "string" },
  help: { type: "boolean" },
  version: { type: "boolean" },
} as const;

/** Options that are said or not, and the system that the articles are for. */
export type Options = { readonly names: readonly string[]; readonly system: SystemName | undefined } & {
  readonly [name in Exclude<keyof typeof known, "for">]: boolean;
};

const isSystem = (name: string): name is SystemName => (systemNames as readonly string[]).includes(name);

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
  let system: SystemName | undefined;
  for (const token of tokens) {
    if (token.kind !== "option") continue;
    const { name, rawName, value } = token;
    if (!Object.hasOwn(known, name) || !rawName.startsWith("--")) {
      const all = Object.keys(known);
      const begun = all.filter((one) => one.startsWith(name));
      const near = (begun.length ? begun : nearestTo(name, all)).map((one) => `--${one}`).join(", ");
      return `Unknown option ${rawName}${near && `; the nearest: ${near}`}.`;
    }
    if (name === "for") {
      if (value === undefined || !isSystem(value)) {
        const near = nearestTo(value ?? "", systemNames);
        return `Unknown system ${value ?? ""}; ${near.length ? `the nearest: ${near.join(", ")}` : `expected one of ${systemNames.join(", ")}`}.`;
      }
      if (system !== undefined && system !== value)
        return `Found --for ${system} and --for ${value}; expected one system.`;
      system = value;
      continue;
    }
    if (value !== undefined) return `Option ${rawName} takes no value.`;
    given.add(name);
  }
  const options = {
    names,
    system,
    write: given.has("write"),
    json: given.has("json"),
    help: given.has("help"),
    version: given.has("version"),
  };
  return names.length || options.help || options.version ? options : "Which file? Expected at least one.";
}
