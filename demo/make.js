// node demo/make.js: writes into the article its build, from seeds, and into the guide's pages and the README what can be
// read off the code. What is made stands between <!-- made: name --> and <!-- end -->; everything else in the pages is written by hand.
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { format, resolveConfig } from "prettier";
import { readBuild } from "@meshwright/calc/document";
import { documentMade, findingsMade, formsMade, notationMade } from "../scripts/guide/document.js";
import {
  elements,
  eventsMade,
  filesMade,
  galleryMade,
  languagesMade,
  partsMade,
  propertiesMade,
  shownFile,
  tagsMade,
} from "../scripts/guide/elements.js";
import { figuresMade } from "../scripts/guide/figures.js";
import { hostsMade, triedMade } from "../scripts/guide/hosts.js";
import { withIds } from "../scripts/guide/html.js";
import { measuredMade } from "../scripts/guide/measured.js";

import { systemsMade } from "./systems.js";

const here = fileURLToPath(new URL(".", import.meta.url));
const limpet = readFileSync(join(here, "..", "seeds", "limpet.json"), "utf8");

/** The guide's pages in the order in which they are read, with what leads to each. */
const chapters = {
  "index.html": "A page of your own",
  "elements.html": "The elements",
  "figures.html": "The figures",
  "notation.html": "In attributes",
  "build.html": "The build document",
  "versions.html": "Ids, events, versions",
  "looks.html": "Looks",
  "files.html": "Files and hosting",
  "blogs.html": "In a blog",
  "systems.html": "In blogs and wikis, one by one",
  "frames.html": "In a frame",
  "apps.html": "In an app",
  "trouble.html": "Trouble, words, cautions",
  "hosts.html": "In other software",
};

function navMade(path) {
  const link = ([file, text]) =>
    `<li><a href="${file}"${path === `guide/${file}` ? ' aria-current="page"' : ""}>${text}</a></li>`;
  return `<ul><li><a href="../">The article</a></li>${Object.entries(chapters).map(link).join("")}<li><a href="../api/">Every name of calc</a></li></ul>`;
}

/** What is made, by name; words behind a name are for its maker. */
async function makers() {
  const { build } = readBuild(limpet);
  const all = await elements();
  const { kinds, shapes } = await documentMade();
  return {
    nav: (path) => navMade(path),
    gallery: () => galleryMade(all, build, limpet),
    limpet: () => `<mw-build id="limpet"><script type="application/json">\n${limpet}</script></mw-build>`,
    tags: () => tagsMade(all),
    figures: () => figuresMade(build),
    kinds: () => kinds,
    shapes: () => shapes,
    forms: formsMade,
    notation: () => notationMade(all),
    properties: () => propertiesMade(all),
    parts: () => partsMade(all),
    events: () => eventsMade(all),
    files: filesMade,
    languages: languagesMade,
    findings: findingsMade,
    systems: () => systemsMade(),
    hosts: hostsMade,
    measured: measuredMade,
    tried: (_, numbers) => triedMade(numbers),
    shown: (_, [path, language]) => shownFile(path, language),
  };
}

/** The article with its build inside, the guide's pages and the README, by their paths in this folder, as they should stand. */
export async function pages() {
  const made = await makers();
  const options = await resolveConfig(here);
  const guide = readdirSync(join(here, "guide")).filter((name) => name.endsWith(".html"));
  const paths = ["index.html", ...guide.map((name) => `guide/${name}`), "../README.md"];
  return Object.fromEntries(
    await Promise.all(
      paths.map(async (path) => {
        const whole = readFileSync(join(here, path), "utf8").replace(
          /(<!-- made: (\w+)((?: [\w./-]+)*) -->)[^]*?(<!-- end -->)/g,
          (_, open, name, words, close) => `${open}\n${made[name](path, words.trim().split(" "))}\n${close}`,
        );
        const text =
          path === "index.html"
            ? whole.replace(
                /(<script type="application\/json">)[^]*?(<\/script>)/,
                (_, open, close) => `${open}\n${limpet}${close}`,
              )
            : path.endsWith(".md")
              ? whole
              : withIds(whole);
        return [path, await format(text, { ...options, parser: path.endsWith(".md") ? "markdown" : "html" })];
      }),
    ),
  );
}

/** Writes them. */
export async function writePages() {
  for (const [path, text] of Object.entries(await pages())) writeFileSync(join(here, path), text);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await writePages();
