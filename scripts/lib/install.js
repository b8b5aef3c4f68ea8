// Installs what the lock file says, where it is not installed already. Uses nothing but Node.
import { existsSync, readFileSync } from "node:fs";
import { at } from "./paths.js";
import { run } from "./run.js";

const readJson = (path) => JSON.parse(readFileSync(path, "utf8"));

/** True where node_modules holds exactly the versions of the lock file. */
export function isInstalled() {
  const installedList = at("node_modules", ".package-lock.json");
  if (!existsSync(installedList)) return false;
  const installed = readJson(installedList).packages;
  return Object.entries(readJson(at("package-lock.json")).packages).every(([path, wanted]) => {
    if (!path.startsWith("node_modules/") || wanted.optional) return true;
    return existsSync(at(path)) && (wanted.link === true || installed[path]?.version === wanted.version);
  });
}

/** Installs if needed; returns false where that failed. What npm has to say goes to standard error. */
export async function install() {
  if (isInstalled()) return true;
  process.stderr.write("Installing what package-lock.json names\n");
  const npm = process.platform === "win32" ? "npm.cmd" : "npm";
  // The browsers that tests need are found or brought on their own: no package fetches one.
  const { code } = await run(npm, ["ci"], { show: true, env: { PUPPETEER_SKIP_DOWNLOAD: "1" } });
  return code === 0;
}
