// The script files that a page can hold: what is in each, how large it is, and its hash for `integrity`.
import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { brotliCompressSync } from "node:zlib";
import { at } from "./paths.js";

/** The tags that a source registers, in its own order. */
export function registeredBy(source) {
  const text = readFileSync(at("packages", "elements", "src", source), "utf8");
  const classes = [...text.matchAll(/^define\(([^)]*)\);/gm)].flatMap(([, list]) => list.match(/Mw\w+/g) ?? []);
  return classes.map((name) => name.replace(/(?<!^)([A-Z])/g, "-$1").toLowerCase());
}

/** What a file is for, by its name. */
function purposeOf(file) {
  const [, table, language] = /^(figures|findings|reports|words|tools)-([\w-]+)\.js$/.exec(file) ?? [];
  if (table) return { table, language };
  if (file === "meshwright.js") return { elements: registeredBy("all.ts") };
  if (file === "meshwright-article.js")
    return { elements: registeredBy("article.ts"), brings: ["meshwright-second.js", "meshwright-third.js"] };
  return { elements: registeredBy(file.includes("second") ? "second.ts" : "third.ts") };
}

/** Each script of `packages/elements/dist` by its name. */
export function scriptFiles(names) {
  const { version } = JSON.parse(readFileSync(at("packages", "elements", "package.json"), "utf8"));
  const files = names.map((file) => {
    const bytes = readFileSync(at("packages", "elements", "dist", file));
    const integrity = `sha384-${createHash("sha384").update(bytes).digest("base64")}`;
    return { file, bytes: bytes.length, brotli: brotliCompressSync(bytes).length, integrity, ...purposeOf(file) };
  });
  return { version, files };
}
