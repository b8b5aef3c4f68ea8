// How sources become what is published: modules as they are written, and whole scripts in one file.
import { createHash } from "node:crypto";
import { existsSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import nodeResolve from "@rollup/plugin-node-resolve";
import { transformSync } from "esbuild";
import { rollup } from "rollup";
import esbuild from "rollup-plugin-esbuild";
import { minifiedBy } from "./minify.js";
import { at, filesBelow } from "./paths.js";

const policyModule = at("packages", "elements", "src", "shared", "page", "policy.ts");

/** Sources import packages by name; whole scripts take them from source, so that what they do not use falls away. */
const packagesFromSource = {
  name: "packages-from-source",
  resolveId(id) {
    const match = /^@meshwright\/(\w+)(?:\/([\w-]+(?:\/lean)?))?$/.exec(id);
    if (match === null) return null;
    const sources = at("packages", match[1], "src");
    const candidates =
      match[2] === undefined
        ? ["index.ts"]
        : ["elements/", "shared/", ""].flatMap((folder) => [
            `${folder}${match[2]}/index.ts`,
            `${folder}${match[2]}.ts`,
          ]);
    return candidates.map((path) => join(sources, path)).find((path) => existsSync(path)) ?? null;
  },
  transform(_code, id) {
    // package.json says so for the built files; rollup has to be told for the sources.
    return id.startsWith(at("packages", "calc", "src")) ? { moduleSideEffects: false } : null;
  },
};

const elements = at("packages", "elements", "src");
const isLanguage = /[\\/]languages[\\/]\w+[\\/](?!en\.)[a-z]{2,3}(-[A-Za-z]+)*\.ts$/;

/** A self-contained script brings languages from beside itself: it has no modules to import. */
const loadersOfClassicScripts = {
  name: "loaders-of-classic-scripts",
  resolveId: (id, importer) =>
    /^\.\/load(-more)?\.js$/.test(id) && importer?.startsWith(elements)
      ? join(dirname(importer), id.replace(".js", "-classic.ts"))
      : null,
};

/** The values of a table in the order of the English one, whose names are known: they would be a third of the file. */
function packed(english, table, path) {
  const names = Object.keys(english);
  for (const name of Object.keys(table))
    if (!names.includes(name)) throw new Error(`${path}: "${name}" is not English.`);
  return names.map((name) => {
    const [known, value] = [english[name], table[name]];
    if (value === undefined) throw new Error(`${path}: "${name}" is missing.`);
    // Sentences by count, and lists, are as long as the language has them.
    const isWhole = typeof value === "string" || Array.isArray(value) || "other" in value;
    return isWhole ? value : packed(known, value, path);
  });
}

const imported = (code) => import(`data:text/javascript;base64,${Buffer.from(code).toString("base64")}`);

/** The values of a language's file, as `stringsFrom` in calc's languages takes them. `code` is JavaScript that imports nothing. */
async function packedTable(path, code) {
  const { code: english } = await bundled({ input: join(dirname(path), "en.ts"), format: "es" });
  const { words } = await imported(code);
  const [table] = Object.values(await imported(english));
  return JSON.stringify(packed(table, words, path));
}

const packedLanguages = {
  name: "packed-languages",
  async transform(code, id) {
    if (!isLanguage.test(id)) return null;
    return { code: `export const words = ${await packedTable(id, code)};`, map: null };
  },
};

/** A language as a classic script, which the self-contained ones load, or a page by itself. */
export async function languageScript(path) {
  const [, kind, language] = /([\w-]+)[\\/]([\w-]+)\.ts$/.exec(path);
  const { code } = transformSync(readFileSync(path, "utf8"), { loader: "ts" });
  const table = await packedTable(path, code);
  const place = `(globalThis[Symbol.for("meshwright tables 1")]??={})["${kind}-${language}"]`;
  return minified(`${place}=${table};globalThis.dispatchEvent?.(new Event("meshwright-words"))`);
}

/** The sources of languages other than English. */
export const languageSources = (folder) => filesBelow(folder, (path) => isLanguage.test(path));

let hashes;

/** The hashes of all languages' scripts by their names, for whoever fetches them under a hash of their own. */
const languageHashes = () => (hashes ??= madeHashes());

async function madeHashes() {
  const sources = ["calc", "elements"].flatMap((owner) => languageSources(at("packages", owner, "src", "languages")));
  const all = sources.map(async (path) => {
    const [, kind, language] = /([\w-]+)[\\/]([\w-]+)\.ts$/.exec(path);
    return [
      `${kind}-${language}`,
      createHash("sha256")
        .update(await languageScript(path))
        .digest("base64"),
    ];
  });
  return Object.fromEntries(await Promise.all(all));
}

/** What stands before code that fetches languages; where nothing does, it falls away. */
const hashTable = async () => `const meshwrightLanguages = ${JSON.stringify(await languageHashes())};\n`;

const typescript = (sourceMap = false) => esbuild({ target: "es2022", tsconfig: false, sourceMap });

/** Rollup's remarks that matter stop the build; an import that nothing answers must not end up in a script. */
function onwarn(warning) {
  if (warning.code === "CIRCULAR_DEPENDENCY" && warning.ids?.some((id) => id.includes("node_modules"))) return;
  if (warning.code === "EMPTY_BUNDLE" || warning.code === "MISSING_NAME_OPTION_FOR_IIFE_EXPORT") return;
  throw new Error(warning.message);
}

/** Writes modules one by one, with everything that `external` names left as an import. */
export async function writeModules({ input, folder, sources, external }) {
  const bundle = await rollup({
    input,
    external,
    onwarn,
    plugins: [typescript(true), packedLanguages],
    treeshake: false,
  });
  const { output } = await bundle.write({
    dir: folder,
    sourcemap: true,
    format: "es",
    preserveModules: true,
    preserveModulesRoot: sources,
    entryFileNames: "[name].js",
    minifyInternalExports: false,
  });
  await bundle.close();
  return output.map((chunk) => chunk.fileName);
}

const litPolicyCall = /(\w+)\?\1\.createPolicy\("lit-html",\{createHTML:(\w+)=>\2\}\):void 0/;

/**
 * Puts our own function in the place of Lit's policy call: a page may allow another policy's name only, and a second copy
 * must not die of the name being taken. Another version of Lit may ask in other words, and then the build has to fail.
 */
function litPolicy() {
  let replaced = 0;
  let calls = 0;
  return {
    name: "lit-policy",
    transform(code, id) {
      if (!/[\\/](lit|lit-html|lit-element|@lit)[\\/]/.test(id.slice(id.lastIndexOf("node_modules")))) return null;
      calls += code.split("createPolicy(").length - 1;
      if (!litPolicyCall.test(code)) return null;
      replaced += 1;
      const hooked = code.replace(litPolicyCall, "meshwrightLitPolicy()");
      return {
        code: `import { litPolicy as meshwrightLitPolicy } from ${JSON.stringify(policyModule)};\n${hooked}`,
        map: null,
      };
    },
    buildEnd(error) {
      if (!error && (calls !== 1 || replaced !== 1)) {
        this.error(`Lit makes ${calls} policies, ${replaced} of them in known words; exactly 1 is expected.`);
      }
    },
  };
}

/** Every tagged template below a node of the syntax tree. */
function* taggedTemplates(node) {
  if (node === null || typeof node !== "object") return;
  if (node.type === "TaggedTemplateExpression" && node.tag.type === "Identifier") yield node;
  for (const value of Object.values(node)) yield* taggedTemplates(value);
}

/** Spaces at the joints of a style sheet mean nothing; those between words do, and those inside quotes. */
const shorterStyle = (text) =>
  text
    .replace(/\/\*[\s\S]*?\*\//g, "")
    .replace(/\s+/g, " ")
    .replace(/ ?([{};,]) ?/g, "$1")
    .replace(/: /g, ":")
    .replace(/;\}/g, "}");

const shorter = {
  css: (text) =>
    text
      .split(/("[^"]*"|'[^']*')/)
      .map((part, index) => (index % 2 === 0 ? shorterStyle(part) : part))
      .join(""),
  // One space lays out like many, so the line breaks of the source become one each.
  html: (text) => text.replace(/\s*\n\s*/g, " "),
};
shorter.svg = shorter.html;

/** Takes the indentation out of templates, which no minifier of JavaScript may touch. */
const shorterTemplates = {
  name: "shorter-templates",
  transform(code, id) {
    if (!id.startsWith(at("packages"))) return null;
    const pieces = [...taggedTemplates(this.parse(code))]
      .filter(({ tag }) => tag.name in shorter)
      .flatMap(({ tag, quasi }) => quasi.quasis.map(({ start, end }) => ({ tag: tag.name, start, end })));
    let result = code;
    for (const { tag, start, end } of pieces.sort((a, b) => b.start - a.start)) {
      result = result.slice(0, start) + shorter[tag](result.slice(start, end)) + result.slice(end);
    }
    return { code: result, map: null };
  },
};

const terserOptions = {
  ecma: 2022,
  compress: { passes: 3, unsafe_arrows: true, unsafe_methods: true, keep_fargs: false, pure_getters: "strict" },
  mangle: true,
  format: { comments: /^!/ },
};

/** The smallest code that does the same. */
async function minified(code, { module = false, toplevel = true, foreign = false } = {}) {
  // A copy: what a call is told becomes part of the options that it was given.
  const options = { ...structuredClone(terserOptions), module, toplevel };
  // Other people's code makes classes of functions, which arrows cannot be.
  if (foreign) Object.assign(options.compress, { unsafe_arrows: false, unsafe_methods: false });
  return minifiedBy(code, options);
}

/** What is beyond ASCII as escapes, which mean the same in strings, templates and patterns. */
const inAscii = (code) =>
  code.replace(/[^\0-\x7f]/g, (unit) => {
    const hex = unit.charCodeAt(0).toString(16);
    return hex.length > 2 ? `\\u${hex.padStart(4, "0")}` : `\\x${hex}`;
  });

/**
 * One self-contained script; everything it imports is inside. `format` is "es" for a module and "iife" for a classic
 * script, which is in ASCII: a page in another encoding takes it for one of its own. `foreign`: there is code in it that is not
 * ours, beside Lit.
 */
export async function wholeScript({ input, format, banner = "", foreign = false }) {
  const { code } = await bundled({ input, format });
  const script = await minified(code, { module: format === "es", foreign });
  return banner + (format === "es" ? script : inAscii(script));
}

/** The bytes that each module brings into a whole script, minified by itself: `[path, bytes]`, the heaviest first. */
export async function weightsOf({ input, format }) {
  return weighed((await bundled({ input, format })).modules);
}

/** The same of modules that Rollup has put together. */
export async function weighed(modules) {
  const weights = [];
  for (const [path, { code }] of Object.entries(modules)) {
    // Its names are used elsewhere, which a minifier that sees one module alone cannot know.
    const small = code === null ? "" : await minified(code, { toplevel: false });
    if (small.length > 0) weights.push([path, small.length]);
  }
  return weights.sort((a, b) => b[1] - a[1]);
}

const pluginsFor = (format) => [
  ...(format === "iife" ? [loadersOfClassicScripts] : []),
  packagesFromSource,
  nodeResolve({ exportConditions: ["browser", "default"] }),
  ...(format === "iife" && existsSync(policyModule) ? [litPolicy()] : []),
  typescript(),
  shorterTemplates,
];

/** One file of code, not minified yet, and the modules that it was put together from. */
async function bundled({ input, format }) {
  const bundle = await rollup({
    input,
    onwarn,
    plugins: pluginsFor(format),
    treeshake: { moduleSideEffects: true, propertyReadSideEffects: false },
  });
  const { output } = await bundle.generate({
    format,
    inlineDynamicImports: true,
    generatedCode: "es2015",
    // A server may import whatever a page has: there is nothing to register there.
    ...(format === "iife" ? { strict: true, intro: `if (!globalThis.HTMLElement) return;\n${await hashTable()}` } : {}),
  });
  await bundle.close();
  return output[0];
}

const stages = at("packages", "calc", "src", "stages");

/**
 * A kind's file holds all that the kind is. A script that comes first takes only some facets of it: each facet that is imported by
 * name is a module of its own then, and what a facet needs comes with it and not before.
 */
const facetsApart = {
  name: "facets-apart",
  transform(code, id) {
    if (dirname(id) !== stages) return null;
    const apart = code.replace(
      /import \{ (\w+)( as \w+)? \} from "(\.\/\w+)\.(?:js|ts)";/g,
      (whole, name, _as, from) =>
        isKind(join(stages, `${from}.ts`)) ? whole.replace(`${from}.js`, `${from}~${name}.js`) : whole,
    );
    return apart === code ? null : { code: apart, map: null };
  },
  resolveId: (id, importer) =>
    id.includes("~") && importer?.startsWith(stages) ? join(stages, id.replace(/\.js$/, ".ts")) : null,
  load: (id) => (id.includes("~") && id.startsWith(stages) ? readFileSync(id.replace(/~\w+/, ""), "utf8") : null),
};
const isKind = (path) => existsSync(path) && /^export const effect:/m.test(readFileSync(path, "utf8"));

/** Takes the place of Rollup's loader: hands what one file has made on to the others. */
const register = `
var made={},heard={};
function systemOf(name){
var own=made[name]={},sets=heard[name]=[];
function put(key,value){
typeof key==="object"?Object.assign(own,key):own[key]=value;
sets.forEach(function(set){set(own)});
return value}
return{register:function(deps,declare){
var it=declare(put,{});
(it.setters||[]).forEach(function(set,n){var from=deps[n].slice(2,-3);set(made[from]);heard[from].push(set)});
it.execute()}}}
var System=systemOf("first");
`;

/**
 * A classic script in several files: the first holds what runs at once, the others what may come later, each with what it takes from
 * those before. They meet on the class of an element; a first file of another build is left alone, and without the file before it one
 * does nothing: who asked for that has been told.
 *
 * @returns the code of each by its name, and the modules that each was put together from
 */
export async function splitScript({ first, later, tag, banner = "" }) {
  const entries = later.map(({ name }) => `\0${name}`);
  const inputs = [first, ...later.map(({ input }) => input)];
  const all = {
    name: "all-files",
    resolveId: (id) => (entries.includes(id) ? id : inputs.includes(id) ? { id, moduleSideEffects: true } : null),
    load: (id) =>
      entries.includes(id)
        ? inputs
            .slice(0, entries.indexOf(id) + 2)
            .map((input) => `import ${JSON.stringify(input)};`)
            .join("\n")
        : null,
  };
  const bundle = await rollup({
    input: { first, ...Object.fromEntries(later.map(({ name }) => [name, `\0${name}`])) },
    onwarn,
    preserveEntrySignatures: "allow-extension",
    plugins: [all, ...pluginsFor("iife"), facetsApart].sort((one) => (one === facetsApart ? -1 : 0)),
    treeshake: { moduleSideEffects: true, propertyReadSideEffects: false },
  });
  const { output } = await bundle.generate({
    format: "system",
    generatedCode: "es2015",
    strict: true,
    entryFileNames: "[name].js",
    chunkFileNames: "[name].js",
    systemNullSetters: false,
  });
  await bundle.close();
  const chunks = Object.fromEntries(output.map((chunk) => [chunk.name, chunk]));
  if (output.length !== inputs.length)
    throw new Error(`${inputs.length} files are expected; ${output.map((one) => one.fileName).join(", ")}.`);
  for (const chunk of output)
    if (chunk.code.includes("meshwrightLanguages")) chunk.code = (await hashTable()) + chunk.code;
  const hash = createHash("sha256");
  for (const name of ["first", ...later.map((one) => one.name)]) hash.update(chunks[name].code);
  const id = hash.digest("base64").slice(0, 8);
  const small = later.map(({ name, file }, n) => {
    const before = later[n - 1]?.name ?? "first";
    return minified(
      `(function(home){
if(!home||!home.more||!home.more(${JSON.stringify(id)},${JSON.stringify(name)},${JSON.stringify(before)},function(System){${chunks[name].code}}))
{console.warn("Meshwright: ${file} and the first file are not of one build; the page stays as it is.");
var own=globalThis.document&&document.currentScript;own&&own.onerror&&own.onerror()}
})(globalThis.customElements&&customElements.get(${JSON.stringify(tag)}))`,
    );
  });
  const codes = {};
  const files = {};
  for (const [n, { name, file }] of later.entries()) {
    codes[name] = banner + inAscii(await small[n]);
    files[name] = [file, `sha384-${createHash("sha384").update(codes[name]).digest("base64")}`];
  }
  const early = await minified(
    `(function(meshwrightFiles){if(!globalThis.HTMLElement)return;${register}
${chunks.first.code}
customElements.whenDefined(${JSON.stringify(tag)}).then(function(home){
if(!home.more)home.more=function(id,name,before,run){if(id===${JSON.stringify(id)})return made[before]&&!made[name]&&run(systemOf(name)),true}});
})(${JSON.stringify(files)})`,
  );
  return {
    codes: { first: banner + inAscii(early), ...codes },
    modules: Object.fromEntries(Object.entries(chunks).map(([name, { modules }]) => [name, modules])),
  };
}
