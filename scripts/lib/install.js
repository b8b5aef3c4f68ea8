// Installs what the lock file says, where it is not installed already. Uses nothing but Node.
import { existsSync, readFileSync } from "node:fs";
import { at } from "./paths.js";
import { run } from "./run.js";

const readJson = (path) => JSON.parse(readFileSync(path, "utf8"));
const say = (text) => process.stderr.write(`${text}\n`);

/** What is to be said where this Node is older than package.json wants; nothing where it is not. */
export function nodeTrouble(version = process.versions.node, wanted = readJson(at("package.json")).engines.node) {
  const [least] = /[\d.]+/.exec(wanted);
  const parts = version.split(".").map(Number);
  const [index, part] = [...least.split(".").entries()].find(([n, text]) => Number(text) !== (parts[n] ?? 0)) ?? [];
  const isOlder = part !== undefined && (parts[index] ?? 0) < Number(part);
  return isOlder ? `Node ${least} or newer is needed; this is ${version}.` : undefined;
}

/** The packages of the lock file that node_modules does not hold, or holds in another version. */
function missing() {
  const installedList = at("node_modules", ".package-lock.json");
  const installed = existsSync(installedList) ? readJson(installedList).packages : {};
  return Object.entries(readJson(at("package-lock.json")).packages)
    .filter(([path, wanted]) => {
      if (!path.startsWith("node_modules/") || wanted.optional) return false;
      if (!existsSync(at(path, "package.json"))) return true;
      return wanted.link !== true && installed[path]?.version !== wanted.version;
    })
    .map(([path]) => path.slice("node_modules/".length));
}

/** Installs if needed; returns false where that failed, and says what is missing in one sentence. */
export async function install() {
  const trouble = nodeTrouble();
  if (trouble !== undefined) {
    say(trouble);
    return false;
  }
  if (missing().length === 0) return true;
  say("Installing what package-lock.json names");
  const npm = process.platform === "win32" ? "npm.cmd" : "npm";
  // The browsers that tests need are found or brought on their own: no package fetches one.
  const { code } = await run(npm, ["ci"], { show: true, env: { PUPPETEER_SKIP_DOWNLOAD: "1" } });
  if (code === 0) return true;
  const [first, ...others] = missing();
  const more = others.length > 0 ? ` and ${others.length} more` : "";
  say(`npm ci could not install what is missing from node_modules: ${first}${more}.`);
  return false;
}
