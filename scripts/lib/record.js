// What was built from what: hashes of a build's inputs and outputs, kept in .cache.
import { createHash } from "node:crypto";
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { isDeepStrictEqual } from "node:util";
import { at, shown } from "./paths.js";

const fileOf = (name) => at(".cache", `${name}.json`);

/** The files' hashes by their paths. */
export const hashesOf = (paths) =>
  Object.fromEntries(
    paths.map((path) => [shown(path), createHash("sha256").update(readFileSync(path)).digest("base64url")]),
  );

/** Keeps the hashes of what a build read, taken before it began, and of what it wrote. */
export function record(name, { inputs, outputs }) {
  mkdirSync(at(".cache"), { recursive: true });
  writeFileSync(fileOf(name), JSON.stringify({ inputs, outputs }));
}

/** True where inputs and outputs are what they were, to the last byte: nothing is gone, cut, older or newer. */
export function isAsRecorded(name, found) {
  try {
    return isDeepStrictEqual(JSON.parse(readFileSync(fileOf(name), "utf8")), found);
  } catch {
    return false;
  }
}
