// Loaded before the command: at the Nth call of a file function that touches a folder, the process dies or the disk is full.
import fs from "node:fs";
import { syncBuiltinESMExports } from "node:module";

// before, after: dies around the call of that number. half: dies in the middle of a write. full: the disk takes half of a
// write, and no more.
const { FAULT, FAULT_AT, FAULT_FOLDER = "" } = process.env;
const opened = new Set();
let calls = 0;
let written = 0;

const die = () => process.kill(process.pid, "SIGKILL");
const full = () => {
  throw Object.assign(new Error("ENOSPC: no space left on device, write"), { code: "ENOSPC" });
};

for (const [name, call] of Object.entries(fs)) {
  if (!name.endsWith("Sync") || typeof call !== "function") continue;
  fs[name] = Object.assign((first, ...rest) => {
    const touches = typeof first === "number" ? opened.has(first) : String(first).startsWith(FAULT_FOLDER);
    const meant = touches && ++calls === Number(FAULT_AT);
    if (meant && FAULT === "before") die();
    if (touches && name === "writeSync" && (FAULT === "half" || FAULT === "full")) {
      if (written++) full();
      const [bytes, at, length] = rest;
      const taken = call(first, bytes, at, length >> 1);
      if (FAULT === "half") die();
      return taken;
    }
    const result = call(first, ...rest);
    if (touches && name === "openSync") opened.add(result);
    if (name === "closeSync") opened.delete(first);
    if (meant && FAULT === "after") die();
    return result;
  }, call);
}
syncBuiltinESMExports();
