import { mkdirSync, mkdtempSync, rmSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { buildSync } from "esbuild";

const root = fileURLToPath(new URL("../../../", import.meta.url));

/** The command as one file that Node can run, and a function that takes it away again. */
export function builtCommand(): { readonly path: string; readonly remove: () => void } {
  const cache = join(root, ".cache");
  mkdirSync(cache, { recursive: true });
  const folder = mkdtempSync(join(cache, "figures-"));
  const path = join(folder, "command.mjs");
  const rooms = [
    "document",
    "drivetrain",
    "evaluate",
    "exact",
    "report",
    "stages",
    "article",
    "languages",
    "layout",
    "gears",
  ];
  buildSync({
    entryPoints: [join(root, "packages/figures/src/command.ts")],
    outfile: path,
    bundle: true,
    platform: "node",
    format: "esm",
    alias: {
      ...Object.fromEntries(
        rooms.map((room) => [`@meshwright/calc/${room}`, join(root, `packages/calc/src/${room}/index.ts`)]),
      ),
      "@meshwright/calc/languages/all": join(root, "packages/calc/src/languages/all.ts"),
    },
    logLevel: "error",
  });
  return { path, remove: () => rmSync(folder, { recursive: true, force: true }) };
}
