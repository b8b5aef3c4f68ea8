// npm run docs: the pages about calc's public names, from their doc comments, into dist/api.
import { existsSync, mkdirSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { isMain } from "./lib/main.js";
import { at, filesBelow, foldersIn } from "./lib/paths.js";
import { commandOf, runNode } from "./lib/run.js";

const sources = at("packages", "calc", "src");
const stampFile = at(".cache", "api");

const stampOfSources = () =>
  filesBelow(sources)
    .map((path) => `${path} ${statSync(path).mtimeMs}`)
    .join("\n");

export const areDocsFresh = () =>
  existsSync(at("dist", "api", "index.html")) &&
  existsSync(stampFile) &&
  readFileSync(stampFile, "utf8") === stampOfSources();

/** Writes the pages; resolves to true where typedoc was content. */
export async function docs() {
  const stamp = stampOfSources();
  const entries = foldersIn(sources)
    .map((folder) => at("packages", "calc", "src", folder, "index.ts"))
    .filter((path) => existsSync(path));
  if (entries.length === 0) return true;
  const { code, output } = await runNode(commandOf("typedoc"), [
    ...["--tsconfig", at("packages", "calc", "tsconfig.json"), "--out", at("dist", "api")],
    ...["--name", "@meshwright/calc", "--readme", "none", "--disableSources", "--hideGenerator", "--skipErrorChecking"],
    ...["--logLevel", "Warn", "--excludePrivate", "--excludeInternal", "--githubPages", "false"],
    ...entries,
  ]);
  if (code !== 0) process.stderr.write(output);
  else {
    mkdirSync(at(".cache"), { recursive: true });
    writeFileSync(stampFile, stamp);
  }
  return code === 0;
}

if (isMain(import.meta)) process.exitCode = (await docs()) ? 0 : 1;
