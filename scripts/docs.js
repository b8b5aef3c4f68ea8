// npm run docs: the pages about calc's public names, from their doc comments, into dist/api.
import { existsSync } from "node:fs";
import { isMain } from "./lib/main.js";
import { at, filesBelow, foldersIn } from "./lib/paths.js";
import { hashesOf, isAsRecorded, record } from "./lib/record.js";
import { commandOf, runNode } from "./lib/run.js";

const sources = at("packages", "calc", "src");
const inputHashes = () => hashesOf(filesBelow(sources));
const outputHashes = () => hashesOf(filesBelow(at("dist", "api")));

export const areDocsFresh = () => isAsRecorded("api", { inputs: inputHashes(), outputs: outputHashes() });

/** Writes the pages; resolves to true where typedoc was content. */
export async function docs() {
  const inputs = inputHashes();
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
  else record("api", { inputs, outputs: outputHashes() });
  return code === 0;
}

if (isMain(import.meta)) process.exitCode = (await docs()) ? 0 : 1;
