// npm run docs: the pages about every public name, from the doc comments, into dist/api.
import { existsSync } from "node:fs";
import { isMain } from "./lib/main.js";
import { at, filesBelow, foldersIn, isSource } from "./lib/paths.js";
import { hashesOf, isAsRecorded, record } from "./lib/record.js";
import { commandOf, runNode } from "./lib/run.js";

const front = at("scripts", "api.md");

/** The tags of our doc comments: those of functions, and those of elements. */
const tags = [
  "@module",
  "@param",
  "@returns",
  "@throws",
  "@example",
  "@attr",
  "@fires",
  "@csspart",
  "@cssprop",
  "@slot",
];

/** The faces that others import. */
const entries = () =>
  [
    ...foldersIn(at("packages", "calc", "src")).map((name) => at("packages", "calc", "src", name, "index.ts")),
    at("packages", "calc", "src", "document", "lean", "index.ts"),
    at("packages", "elements", "src", "index.ts"),
    ...["store", "words", "tools"].map((name) => at("packages", "elements", "src", "shared", name, "index.ts")),
    at("packages", "figures", "src", "index.ts"),
  ].filter((path) => existsSync(path));

const inputHashes = () =>
  hashesOf([
    ...["calc", "elements", "figures"].flatMap((name) => filesBelow(at("packages", name, "src"), isSource)),
    ...["docs.js", "api.md", "lib/api-pages.js", "lib/examples.js"].map((name) => at("scripts", name)),
  ]);
const outputHashes = () => hashesOf(filesBelow(at("dist", "api")));

export const areDocsFresh = () => isAsRecorded("api", { inputs: inputHashes(), outputs: outputHashes() });

/** Writes the pages; resolves to true where typedoc was content. */
export async function docs() {
  const inputs = inputHashes();
  const { code, output } = await runNode(commandOf("typedoc"), [
    ...[
      "--tsconfig",
      at("tsconfig.json"),
      "--out",
      at("dist", "api"),
      "--plugin",
      at("scripts", "lib", "api-pages.js"),
    ],
    ...["--name", "Meshwright", "--readme", front, "--disableSources", "--hideGenerator", "--skipErrorChecking"],
    ...["--logLevel", "Warn", "--excludePrivate", "--excludeProtected", "--excludeInternal", "--excludeExternals"],
    ...["--githubPages", "false", "--validation.notExported", "false", "--validation.invalidLink", "true"],
    ...tags.flatMap((tag) => ["--blockTags", tag]),
    ...entries(),
  ]);
  if (code !== 0) process.stderr.write(output);
  else record("api", { inputs, outputs: outputHashes() });
  return code === 0;
}

if (isMain(import.meta)) process.exitCode = (await docs()) ? 0 : 1;
