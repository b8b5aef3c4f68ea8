// npm run release: makes the tarballs as they would go to a registry, and checks them. Publishes nothing.
import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { basename } from "node:path";
import { build } from "./build.js";
import { isMain } from "./lib/main.js";
import { faultsOf, pack } from "./lib/pack.js";
import { at, shown } from "./lib/paths.js";
import { commandOf, run, runNode } from "./lib/run.js";

const say = (text) => process.stdout.write(`${text}\n`);

/** What would have to be put right before anybody may publish, though the tarballs are sound. */
async function stillToDo() {
  const { repository } = JSON.parse(readFileSync(at("package.json"), "utf8"));
  const { output } = await run("git", ["status", "--porcelain"]);
  return [
    ...(/example\.com\/OWNER/.test(repository.url)
      ? ["The repository has no name yet: put it in the place of example.com/OWNER in every package.json."]
      : []),
    ...(output.trim() ? ["There are changes that are not committed."] : []),
  ];
}

async function release() {
  if (!(await build(undefined, { always: true }))) return false;
  const tarballs = await pack(at("dist", "release"));
  let good = true;
  for (const tarball of Object.values(tarballs)) {
    const faults = await faultsOf(tarball);
    const bytes = readFileSync(tarball);
    say(`${basename(tarball)}  ${bytes.length} bytes  sha512-${createHash("sha512").update(bytes).digest("base64")}`);
    for (const fault of faults) say(`  ${fault}`);
    good &&= faults.length === 0;
  }
  const tests = await runNode(commandOf("vitest"), ["run", "--config", "vitest.packed.config.ts"], { show: true });
  good &&= tests.code === 0;
  for (const line of await stillToDo()) say(line);
  say(
    good ? `Made and checked in ${shown(at("dist", "release"))}. Nothing was published.` : "Not fit to be published.",
  );
  return good;
}

if (isMain(import.meta)) process.exitCode = (await release()) ? 0 : 1;
