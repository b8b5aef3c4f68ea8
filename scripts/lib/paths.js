// Where things are, and the few questions that every script asks of the file system.
import { existsSync, readdirSync, statSync } from "node:fs";
import { join, relative, sep } from "node:path";
import { fileURLToPath } from "node:url";

export const root = fileURLToPath(new URL("../../", import.meta.url));

/** An absolute path inside the repository. */
export const at = (...parts) => join(root, ...parts);

/** A path as people write it: from the repository's root, with forward slashes. */
export const shown = (path) => relative(root, path).split(sep).join("/");

/** Tests, and what helps them: nothing of it is built. */
const isTest = (path) => path.endsWith(".test.ts") || /^packages\/\w+\/(src\/)?test\//.test(shown(path));

/** What packages are built from. */
export const isSource = (path) => path.endsWith(".ts") && !path.endsWith(".d.ts") && !isTest(path);

/**
 * All files below a folder, sorted; an absent folder holds none.
 * @param {string} folder
 * @param {(path: string) => boolean} keep
 * @returns {string[]}
 */
export function filesBelow(folder, keep = () => true) {
  if (!existsSync(folder)) return [];
  const found = [];
  for (const entry of readdirSync(folder, { withFileTypes: true })) {
    if (entry.name === "node_modules" || entry.name === "dist") continue;
    const path = join(folder, entry.name);
    if (entry.isDirectory()) found.push(...filesBelow(path, keep));
    else if (keep(path)) found.push(path);
  }
  return found.sort();
}

/**
 * The names of the folders directly below a folder.
 * @param {string} folder
 * @returns {string[]}
 */
export function foldersIn(folder) {
  if (!existsSync(folder)) return [];
  return readdirSync(folder)
    .filter((name) => statSync(join(folder, name)).isDirectory())
    .sort();
}
