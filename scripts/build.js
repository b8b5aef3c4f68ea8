// npm run build: writes packages/*/dist. With --if-stale only where what was built is gone, damaged, or of other sources.
// Names of packages choose among them.
import { createHash } from "node:crypto";
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { basename, dirname, join, relative, sep } from "node:path";
import { pathToFileURL } from "node:url";
import { isMain } from "./lib/main.js";
import { at, filesBelow, isSource } from "./lib/paths.js";
import { hashesOf, isAsRecorded, record } from "./lib/record.js";
import { commandOf, runNode } from "./lib/run.js";

/** In this order: each may use the ones before. */
const packageNames = ["calc", "elements", "figures", "notebook"];

/** Self-contained classic scripts: by package, the file and the source that it begins with. */
const wholeScripts = {
  elements: { "meshwright.js": "all.ts" },
  notebook: { "notebook.js": "index.ts", "embed.js": "embed.ts" },
};

/** The same in several files, which come one after the other: the files and the sources that they begin with. */
const splitScripts = {
  elements: {
    first: ["meshwright-article.js", "article.ts"],
    second: ["meshwright-second.js", "second.ts"],
    third: ["meshwright-third.js", "third.ts"],
    // They meet on the class of this element.
    tag: "mw-build",
  },
};

/** The drivetrain that the notebook opens a copy of as an example. */
const example = at("seeds", "limpet.json");

/** Everything that the build of a package reads. */
const inputsOf = (name) => [
  ...packageNames
    .slice(0, packageNames.indexOf(name) + 1)
    .flatMap((one) => filesBelow(at("packages", one), (path) => isSource(path) || path.endsWith(".json"))),
  ...filesBelow(at("scripts", "lib")),
  ...["scripts/build.js", "package-lock.json", "tsconfig.json"].map((path) => at(path)),
  ...(name === "notebook" ? [example, at("demo", "limpet.svg"), ...filesBelow(at("demo", "notebook"))] : []),
];
const outputsOf = (name) => filesBelow(at("packages", name, "dist"));

const isFresh = (name) =>
  isAsRecorded(`build-${name}`, { inputs: hashesOf(inputsOf(name)), outputs: hashesOf(outputsOf(name)) });

/** Whatever an earlier build left in the folder and this one did not write. */
function removeOthers(folder, written) {
  const kept = new Set(written.map((name) => join(folder, name)));
  const isOurs = (path) => /\.(js|d\.ts|map)$/.test(path);
  for (const path of filesBelow(folder, isOurs)) {
    const source = path.replace(/\.map$/, "").replace(/\.d\.ts$/, ".js");
    if (!kept.has(path) && !kept.has(source)) rmSync(path);
  }
}

/** The modules of a package, one file for each source. */
async function buildModules(name, external) {
  const { writeModules } = await import("./lib/bundle.js");
  const sources = at("packages", name, "src");
  const input = filesBelow(sources, isSource);
  if (input.length === 0) return [];
  return writeModules({ input, folder: at("packages", name, "dist"), sources, external });
}

// Almost all of a script runs as it loads: browsers that know the first line compile it meanwhile, off the page's thread.
// Lit's licence asks for its notice wherever its code goes.
export const banner = (version) =>
  `//# allFunctionsCalledOnLoad\n/*! Meshwright ${version}, MIT licence; with Lit, BSD-3-Clause licence, Copyright 2017 Google LLC */\n`;

/** The self-contained classic scripts of a package. */
async function buildScripts(name) {
  const { splitScript, wholeScript } = await import("./lib/bundle.js");
  const { version } = JSON.parse(readFileSync(at("packages", name, "package.json"), "utf8"));
  const whole = async ([file, source]) => {
    const input = at("packages", name, "src", source);
    return [
      [file, await wholeScript({ input, format: "iife", banner: banner(version), foreign: name === "notebook" })],
    ];
  };
  const split = async ({ tag: _, ...files }) => {
    const { codes } = await splitScript({ ...splitSources(name), banner: banner(version) });
    return Object.entries(files).map(([place, [file]]) => [file, codes[place]]);
  };
  const scripts = await Promise.all([
    ...Object.entries(wholeScripts[name] ?? {}).map(whole),
    ...(Object.hasOwn(splitScripts, name) ? [split(splitScripts[name])] : []),
  ]);
  for (const [file, code] of scripts.flat()) writeFileSync(at("packages", name, "dist", file), code);
  return scripts.flat().map(([file]) => file);
}

/** Where the build writes a script: by package and source, the whole ones, and the files of the split one by their names. */
export const writtenScripts = () => ({
  ...Object.fromEntries(
    Object.entries(wholeScripts).flatMap(([name, files]) =>
      Object.entries(files).map(([file, source]) => [
        at("packages", name, "src", source),
        at("packages", name, "dist", file),
      ]),
    ),
  ),
  ...Object.fromEntries(
    Object.entries(splitScripts).flatMap(([name, { tag: _, ...files }]) =>
      Object.entries(files).map(([place, [file]]) => [place, at("packages", name, "dist", file)]),
    ),
  ),
});

/** What a script in several files is made from. */
export function splitSources(name = "elements") {
  const { first, tag, ...others } = splitScripts[name];
  const source = ([, path]) => at("packages", name, "src", path);
  const later = Object.entries(others).map(([place, one]) => ({ name: place, input: source(one), file: one[0] }));
  return { first: source(first), later, tag };
}

/** The languages as classic scripts, beside the self-contained ones that load them: `figures-de.js`, `words-de.js`. */
async function buildLanguages(name) {
  const { languageScript, languageSources } = await import("./lib/bundle.js");
  const written = [];
  const sources = name === "elements" ? ["calc", "elements"] : [];
  for (const path of sources.flatMap((one) => languageSources(at("packages", one, "src")))) {
    const file = `${basename(dirname(path))}-${basename(path, ".ts")}.js`;
    writeFileSync(at("packages", name, "dist", file), await languageScript(path));
    written.push(file);
  }
  return written;
}

/** Type declarations. What is wrong with types is for `npm run check` to say; a build goes on. */
async function declarations(name) {
  const project = at("packages", name, "tsconfig.json");
  if (!existsSync(project)) return;
  await runNode(commandOf("typescript-native", "tsc"), [
    "-p",
    project,
    ...["--noEmit", "false", "--declaration", "--declarationMap", "--emitDeclarationOnly", "--noEmitOnError", "false"],
  ]);
}

/** Elements that others place in their pages, where that is not all that a package registers. */
const publicTags = { elements: undefined, notebook: ["mw-notebook"] };

/** Manifest, editor data and types for frameworks; every entry's declarations bring the maps of tags and events along. */
async function writeElementTypes(name) {
  if (!Object.hasOwn(publicTags, name)) return;
  const [{ manifestOf }, { typeFiles }] = await Promise.all([
    import("./lib/manifest.js"),
    import("./lib/element-types.js"),
  ]);
  const sources = at("packages", name, "src");
  const folder = at("packages", name, "dist");
  const files = typeFiles(await manifestOf({ sources, paths: filesBelow(sources, isSource), tags: publicTags[name] }));
  mkdirSync(join(folder, "types"), { recursive: true });
  for (const [path, text] of Object.entries(files)) writeFileSync(join(folder, path), text);
  const { exports } = JSON.parse(readFileSync(at("packages", name, "package.json"), "utf8"));
  const tags = join(folder, "types", "tags.d.ts");
  for (const types of new Set(Object.values(exports).flatMap((one) => one.types ?? []))) {
    const path = at("packages", name, types);
    if (types.includes("*") || /\/types\//.test(types)) continue;
    const from = relative(dirname(path), tags)
      .split(sep)
      .join("/")
      .replace(/\.d\.ts$/, ".js");
    const line = `import ${JSON.stringify(from.startsWith(".") ? from : `./${from}`)};\n`;
    // A script of its own exports nothing: what it brings are tags. Lines that the map of a declaration counts stay where they are.
    const text = existsSync(path) ? readFileSync(path, "utf8") : "export {};\n";
    if (text.includes(line)) continue;
    const [, own, end] = /^([^]*?)(\n?\/\/# sourceMappingURL=.*\s*)?$/.exec(text);
    writeFileSync(path, `${own.trimEnd()}\n${line}${(end ?? "").trimStart()}`);
  }
}

/** What stands in each script file, with the hash that a page may ask for. */
async function writeFiles(name, scripts) {
  if (name !== "elements") return;
  const { scriptFiles } = await import("./lib/script-files.js");
  const text = JSON.stringify(scriptFiles(scripts), null, 2);
  writeFileSync(at("packages", name, "dist", "files.json"), `${text}\n`);
}

/** The licences of what the whole scripts hold, which ask to go wherever the code goes. */
function writeLicences(name) {
  const { dependencies = {} } = JSON.parse(readFileSync(at("packages", name, "package.json"), "utf8"));
  const found = new Map();
  const add = (one) => {
    if (found.has(one) || one.startsWith("@meshwright/")) return;
    const folder = at("node_modules", one);
    const manifest = JSON.parse(readFileSync(join(folder, "package.json"), "utf8"));
    const file = readdirSync(folder).find((path) => /^licen[cs]e/i.test(path));
    found.set(
      one,
      `${one} ${manifest.version} (${manifest.license})\n\n${file ? readFileSync(join(folder, file), "utf8").trim() : ""}\n`,
    );
    Object.keys(manifest.dependencies ?? {})
      .filter((other) => !other.startsWith("@types/"))
      .forEach(add);
  };
  Object.keys(dependencies).forEach(add);
  const text = [...found.keys()]
    .sort()
    .map((one) => found.get(one))
    .join(`\n${"-".repeat(72)}\n\n`);
  writeFileSync(at("packages", name, "dist", "LICENSES.txt"), text);
}

/** What is imported by a name, and not by a path, stays an import. */
const external = (id) => /^(node:|@?[a-z])/.test(id);

/** The Schema of a build as a file, for editors that check JSON as it is written. */
async function writeSchema() {
  const { buildSchema } = await import(pathToFileURL(at("packages", "calc", "dist", "document", "index.js")).href);
  const { describedSchema } = await import("./lib/descriptions.js");
  const text = `${JSON.stringify(await describedSchema(buildSchema()), null, 2)}\n`;
  writeFileSync(at("packages", "calc", "dist", "build.schema.json"), text);
}

/** The notebook as one file, to keep beside a blog or on a stick: page, script and example in one. */
function writeNotebookFile() {
  const folder = at("packages", "notebook", "dist");
  // What closes a script, or opens a comment in one, stands in it as an escape.
  const inside = (code) => code.replace(/<(?=\/script|!--)/gi, "\\x3c");
  const script = inside(readFileSync(join(folder, "notebook.js"), "utf8"));
  const seed = inside(JSON.stringify(JSON.stringify(JSON.parse(readFileSync(example, "utf8")))));
  const page = readFileSync(at("demo", "notebook", "index.html"), "utf8");
  const styles = readFileSync(at("demo", "notebook", "notebook.css"), "utf8");
  const whole = page
    .replace(/ offline="[^"]*"/, "")
    .replace(/ *<link rel="(icon|stylesheet)"[^>]*>\n/g, "")
    .replace(
      /<script[^>]*><\/script>/,
      () => `<script>globalThis.meshwrightExample = ${seed};</script>\n    <style>${styles}</style>`,
    )
    .replace("</body>", () => `<script>${script}</script>\n  </body>`)
    .replace(/ *<footer class="back">.*?<\/footer>\n/s, "");
  writeFileSync(join(folder, "notebook.html"), whole);
}

/**
 * What the notebook's worker keeps, under a name that is another whenever any of it is: page and script are of one build, always.
 */
function writeKeptList() {
  const folder = at("packages", "notebook", "dist");
  const own = {
    "./": "index.html",
    "notebook.css": "notebook.css",
    "embed.html": "embed.html",
    "embed.css": "embed.css",
  };
  const files = [
    ...Object.entries(own).map(([address, file]) => [address, at("demo", "notebook", file)]),
    ...["notebook.js", "embed.js"].map((file) => [`script/${file}`, join(folder, file)]),
    ["../seeds/limpet.json", example],
    ["../limpet.svg", at("demo", "limpet.svg")],
  ];
  const hash = createHash("sha256");
  for (const [, path] of files) hash.update(readFileSync(path));
  const kept = { version: hash.digest("hex").slice(0, 16), files: files.map(([address]) => address) };
  writeFileSync(join(folder, "kept.js"), `self.meshwrightKept = ${JSON.stringify(kept, null, 2)};\n`);
}

/** Types are made against the declarations of the packages before: `before` is when they are there. */
async function buildPackage(name, before) {
  const inputs = hashesOf(inputsOf(name));
  const written = await buildModules(name, external);
  if (written.length > 0) {
    const scripts = [...(await buildScripts(name)), ...(await buildLanguages(name))];
    removeOthers(at("packages", name, "dist"), [...written, ...scripts]);
    if (name === "calc") await writeSchema();
    if (name === "notebook") {
      writeNotebookFile();
      writeKeptList();
    }
    if (name in wholeScripts) writeLicences(name);
    await writeFiles(name, scripts);
    await before;
    await declarations(name);
    await writeElementTypes(name);
  }
  record(`build-${name}`, { inputs, outputs: hashesOf(outputsOf(name)) });
}

/** Why something cannot be built, in one sentence. */
function reasonOf(error) {
  if (/^ERR_(MODULE|PACKAGE)|MODULE_NOT_FOUND$/.test(error.code ?? ""))
    return `node_modules is incomplete (${error.message.split("\n")[0]}); npm ci brings what is missing.`;
  return error.message;
}

/**
 * Builds the packages that are not fresh (all of them where `always`), and goes on after one that cannot be built.
 * Resolves to true where everything is there.
 */
export async function build(names = packageNames, { always = false } = {}) {
  const built = async (name, before) => {
    try {
      await buildPackage(name, before);
      return true;
    } catch (error) {
      process.stderr.write(`${name} cannot be built: ${reasonOf(error)}\n`);
      return false;
    }
  };
  const all = [];
  for (const name of names.filter((one) => always || !isFresh(one))) all.push(built(name, all.at(-1)));
  return (await Promise.all(all)).every(Boolean);
}

if (isMain(import.meta)) {
  const always = !process.argv.includes("--if-stale");
  const named = process.argv.slice(2).filter((name) => packageNames.includes(name));
  process.exitCode = (await build(named.length > 0 ? named : packageNames, { always })) ? 0 : 1;
}
