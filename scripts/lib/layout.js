// Which folder may import which. Imports run one way, and a folder is entered by its face only.
import { readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { at, filesBelow, root, shown } from "./paths.js";

const calcOrder = [
  ["exact"],
  ["kinds"],
  ["build"],
  ["evaluate"],
  ["mesh", "motion", "parts", "search"],
  ["document"],
  ["report"],
];
const calcRank = new Map(calcOrder.flatMap((folders, rank) => folders.map((folder) => [folder, rank])));

/** Packages from the ground up; figures and bench stand side by side. */
const packageRank = new Map([
  ["calc", 0],
  ["elements", 1],
  ["figures", 2],
  ["bench", 2],
  ["demo", 3],
]);

/** What the elements share, from the ground up; all other folders of the package are elements. */
const elementsRank = new Map(["host", "words", "store", "base"].map((folder, rank) => [folder, rank]));

/** An element's folder has two faces: its class, and its registration, so that a class can be had without registering. */
const faces = new Set(["index", "define"]);

/** Each language is a small file that is loaded by itself. */
const isLanguage = (folder, file) => folder === "words" && /^[a-z]{2,3}(-[A-Za-z]+)*$/.test(file);

const importPattern =
  /(?:^|[^\w$.])(?:import|export)\s*(?:type\s+)?(?:[\w$*{][^"'`;]*?\sfrom\s*)?["']([^"'\n]+)["']|[^\w$.]import\(\s*["']([^"'\n]+)["']/g;

/** The module names that a source imports, types included. Comments do not count. */
export function importsOf(code) {
  const bare = code.replace(/\/\*[\s\S]*?\*\/|(^|[\s;])\/\/[^\n]*/g, "$1");
  return [...bare.matchAll(importPattern)].map((match) => match[1] ?? match[2]);
}

/** Where a source belongs: its package, the folder below src ("" at its top) and its name without ending. */
function placeOf(path) {
  const match = /^(?:packages\/([\w-]+)\/src|(demo))\/(?:(.*)\/)?([^/]+?)(\.test)?\.(?:ts|js)$/.exec(path);
  if (match === null) return undefined;
  return { package: match[1] ?? match[2], folder: (match[3] ?? "").split("/")[0], file: match[4], isTest: !!match[5] };
}

/** What is wrong with one import, or undefined. `from` and `to` are places; `deep` tells that `to` is below its folder. */
function problemOf(from, to, deep) {
  if (from.package !== to.package) return "is a path into another package; import it by its name";
  if (from.folder === to.folder || from.isTest) return undefined;
  if (to.folder === "") return "is the top of the package, which nothing below may import";
  const isFace = !deep && (faces.has(to.file) || isLanguage(to.folder, to.file));
  if (!isFace) return `reaches past the index of ${to.folder}`;
  const ranks = from.package === "calc" ? calcRank : from.package === "elements" ? elementsRank : undefined;
  if (ranks === undefined || from.folder === "") return undefined;
  const above = ranks.get(from.folder) ?? (from.package === "calc" ? undefined : Infinity);
  const below = ranks.get(to.folder) ?? (from.package === "calc" ? undefined : Infinity);
  if (above === undefined) return `comes from ${from.folder}, a folder that has no place in the order`;
  if (below === undefined) return `leads to ${to.folder}, a folder that has no place in the order`;
  return below > above ? `runs upward, from ${from.folder} to ${to.folder}` : undefined;
}

/** One cycle among nodes, as a list that ends where it begins, or undefined. `edges` maps a node to a set of nodes. */
export function cycleIn(edges) {
  const done = new Set();
  const visit = (node, path) => {
    const start = path.indexOf(node);
    if (start >= 0) return [...path.slice(start), node];
    if (done.has(node)) return undefined;
    for (const next of edges.get(node) ?? []) {
      const cycle = visit(next, [...path, node]);
      if (cycle !== undefined) return cycle;
    }
    done.add(node);
    return undefined;
  };
  for (const node of edges.keys()) {
    const cycle = visit(node, []);
    if (cycle !== undefined) return cycle;
  }
  return undefined;
}

const read = (path) => readFileSync(path, "utf8");

/** The sources that the order holds for: a map from path (from the repository's root) to text. */
function sources() {
  const isCode = (path) => /\.(ts|js)$/.test(path) && !path.endsWith(".d.ts");
  const paths = [...filesBelow(at("packages"), isCode), ...filesBelow(at("demo"), isCode)];
  return new Map(paths.map((path) => [shown(path), read(path)]));
}

/** All that is wrong with the imports of a set of sources, one sentence each. */
export function layoutProblems(files = sources()) {
  const problems = [];
  const folderEdges = new Map();
  const fileEdges = new Map();
  const addEdge = (edges, from, to) => {
    if (!edges.has(from)) edges.set(from, new Set());
    edges.get(from).add(to);
  };
  for (const [path, code] of files) {
    const from = placeOf(path);
    if (from === undefined) continue;
    for (const name of importsOf(code)) {
      const packageName = /^@meshwright\/([\w-]+)/.exec(name)?.[1];
      if (packageName !== undefined) {
        const isUpward = (packageRank.get(packageName) ?? Infinity) >= (packageRank.get(from.package) ?? -1);
        if (isUpward && from.package !== "demo") problems.push(`${path}: "${name}" runs upward between packages.`);
        continue;
      }
      if (!name.startsWith(".")) {
        if (from.package === "calc") problems.push(`${path}: "${name}": calc has no dependencies.`);
        continue;
      }
      const target = shown(join(root, dirname(path), name));
      const to = placeOf(target);
      if (to === undefined) {
        if (!from.isTest && from.package !== "demo") problems.push(`${path}: "${name}" leaves the package's sources.`);
        continue;
      }
      const deep = target.split("/").length > (to.folder === "" ? 4 : 5);
      const problem = problemOf(from, to, deep);
      if (problem !== undefined) problems.push(`${path}: "${name}" ${problem}.`);
      if (from.isTest) continue;
      addEdge(fileEdges, path, target.replace(/\.js$/, ".ts"));
      if (from.folder !== to.folder && from.folder !== "") {
        // A registration only calls on classes: it does not tie its folder to the others.
        if (from.file !== "define")
          addEdge(folderEdges, `${from.package}/${from.folder}`, `${to.package}/${to.folder}`);
      }
    }
  }
  const folderCycle = cycleIn(folderEdges);
  if (folderCycle !== undefined) problems.push(`Folders import each other in a circle: ${folderCycle.join(" -> ")}.`);
  const fileCycle = cycleIn(fileEdges);
  if (fileCycle !== undefined) problems.push(`Files import each other in a circle: ${fileCycle.join(" -> ")}.`);
  return problems;
}
