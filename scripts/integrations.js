// node scripts/integrations.js: writes into integrations/ the lists of elements and attributes, from calc's table of them, and puts
// together in dist/integrations what an author installs: each folder with the script inside, and its hash where that has to be
// written down.
import { createHash } from "node:crypto";
import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { format, resolveConfig } from "prettier";
import { build } from "./build.js";
import { isMain } from "./lib/main.js";
import { at, filesBelow, foldersIn } from "./lib/paths.js";
import { zipOf } from "./integrations/zip.js";

const here = (...parts) => at("integrations", ...parts);
const note = "Made by `node scripts/integrations.js` from calc's table of attributes";

/** The closed table, as the integrations need it. */
export async function tables() {
  const [{ axleNames, axleParts, elementAttributes, notationName }, { drives, figureSpecs, scopes, units }] =
    await Promise.all([import("@meshwright/calc/document"), import("@meshwright/calc/report")]);
  const { buildWords } = await import("@meshwright/calc/document");
  const axles = axleNames.flatMap((name) => [name, ...axleParts.map((part) => `${name}-${part}`)]);
  const own = (tag) => (tag === "mw-build" ? [...buildWords, ...axles].filter(notationName) : []);
  const measures = Object.values(figureSpecs).flatMap(({ measure }) => measure ?? []);
  return {
    elements: Object.fromEntries(
      Object.entries(elementAttributes).map(([tag, names]) => [tag, ["build", ...names, ...own(tag)]]),
    ),
    /** Axles of other names. */
    axle: `^axle-[a-z][a-z0-9]*(?:-[a-z0-9]+)*$`,
    words: {
      figure: Object.keys(figureSpecs),
      scope: [...scopes],
      drive: [...drives],
      measure: [...new Set(measures)],
      unit: [...new Set(Object.values(units).flat())],
      sign: ["none"],
    },
    longest: 5000,
  };
}

const javascript = ({ elements, axle, words, longest }) =>
  [
    `// ${note}, and of scripts/integrations/marks.js.`,
    "// Which of our tags and attributes may stand in a page, and what is wrong with one that may not.",
    `const elements = ${JSON.stringify(elements)};`,
    `const axle = /${axle}/;`,
    `const words = ${JSON.stringify(words)};`,
    `const longest = ${longest};`,
    "",
    readFileSync(at("scripts", "integrations", "marks.js"), "utf8"),
  ].join("\n");

const php = (value, depth = 0) => {
  const pad = "\t".repeat(depth + 1);
  const quoted = (text) => `'${String(text).replace(/['\\]/g, "\\$&")}'`;
  if (Array.isArray(value)) return `array( ${value.map((one) => php(one)).join(", ")} )`;
  if (typeof value !== "object") return typeof value === "number" ? String(value) : quoted(value);
  const lines = Object.entries(value).map(([name, one]) => `${pad}${quoted(name)} => ${php(one, depth + 1)},`);
  return `array(\n${lines.join("\n")}\n${"\t".repeat(depth)})`;
};

/** Python's lists, one element a line. */
const python = ({ elements, axle, words, longest }) => {
  const lines = (name, table) =>
    `${name} = {\n${Object.entries(table)
      .map(([key, list]) => `    ${JSON.stringify(key)}: ${JSON.stringify(list.join(" "))}.split(),`)
      .join("\n")}\n}`;
  return [lines("ELEMENTS", elements), lines("WORDS", words), `AXLE = r"${axle}"`, `LONGEST = ${longest}`].join("\n");
};

/** Puts a text between the marks of a file that is otherwise written by hand. */
function between(path, text) {
  const whole = readFileSync(path, "utf8");
  const filled = whole.replace(/(# made[^\n]*\n)[^]*?(# end\n)/, (_, open, close) => `${open}${text}\n${close}`);
  if (!/# made[^\n]*\n[^]*?# end\n/.test(whole)) throw new Error(`${path} has no place for the lists.`);
  return filled;
}

/** A shortcode of Hugo. */
const shortcode = (tag) =>
  `{{- partial "meshwright/mark.html" (dict "shortcode" . "tag" "${tag}" "inner" .Inner) -}}\n`;

/** What stands in the files that are made, by their paths. */
export async function made() {
  const all = await tables();
  const options = await resolveConfig(here("marks.js"));
  const formatted = (text, parser) => format(text, { ...options, parser });
  const code = await formatted(javascript(all), "babel");
  const files = {
    ...Object.fromEntries(
      ["markdown-it", "remark", "eleventy", "astro"].map((folder) => [here(folder, "marks.js"), code]),
    ),
    [here("mkdocs", "meshwright.py")]: between(here("mkdocs", "meshwright.py"), python(all)),
    [here("wordpress", "meshwright", "marks.php")]: `<?php\n/**\n * ${note}.\n */\n\nreturn ${php(all)};\n`,
    [here("hugo", "data", "meshwright.json")]: await formatted(JSON.stringify(all), "json"),
  };
  for (const tag of Object.keys(all.elements))
    files[here("hugo", "layouts", "shortcodes", `${tag}.html`)] = shortcode(tag);
  return files;
}

/** The script that an integration brings, and the languages that it fetches from beside itself. */
const scripts = () =>
  readdirSync(at("packages", "elements", "dist")).filter(
    (name) => name === "meshwright.js" || /^(figures|findings|words|reports|tools)-[a-z]{2,3}\.js$/.test(name),
  );

/** Where the script lies in each folder. */
const placeOfScript = {
  astro: "public/meshwright",
  eleventy: "script",
  hugo: "static/meshwright",
  jekyll: "assets/meshwright",
  mkdocs: "script",
  wordpress: "meshwright/script",
};

/** What an author installs, in dist/integrations: folders, and for WordPress the archive that it takes. */
export function pack(folder = at("dist", "integrations")) {
  rmSync(folder, { recursive: true, force: true });
  const from = (name) => at("packages", "elements", "dist", name);
  const script = readFileSync(from("meshwright.js"));
  const integrity = `sha384-${createHash("sha384").update(script).digest("base64")}`;
  const { version } = JSON.parse(readFileSync(at("packages", "elements", "package.json"), "utf8"));
  for (const name of foldersIn(here())) {
    cpSync(here(name), join(folder, name), { recursive: true });
    const place = placeOfScript[name];
    if (!place) continue;
    mkdirSync(join(folder, name, place), { recursive: true });
    for (const file of scripts()) cpSync(from(file), join(folder, name, place, file));
    // Where nothing works out a hash while the site is made, it is written down.
    for (const path of filesBelow(join(folder, name), (one) => /\.(html|php)$/.test(one))) {
      const text = readFileSync(path, "utf8");
      if (/VERSION-OF-SCRIPT|HASH-OF-SCRIPT/.test(text))
        writeFileSync(path, text.replaceAll("VERSION-OF-SCRIPT", version).replaceAll("HASH-OF-SCRIPT", integrity));
    }
  }
  const plugin = join(folder, "wordpress", "meshwright");
  if (existsSync(plugin)) writeFileSync(join(folder, "wordpress", "meshwright.zip"), zipOf(plugin));
  return folder;
}

if (isMain(import.meta)) {
  if (!(await build(["calc", "elements"]))) process.exit(1);
  for (const [path, text] of Object.entries(await made())) {
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, text);
  }
  process.stdout.write(`What authors install: ${pack()}\n`);
}
