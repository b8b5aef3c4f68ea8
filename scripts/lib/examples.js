// Examples of our names: in doc comments, and in READMEs. Each stands with the imports that it needs.
import ts from "typescript";
import { pathToFileURL } from "node:url";
import { readFileSync } from "node:fs";
import { at } from "./paths.js";

/** The faces of calc, in the order in which they build on each other. */
const faces = () => {
  const { exports } = JSON.parse(readFileSync(at("packages", "calc", "package.json"), "utf8"));
  return Object.keys(exports).filter((path) => /^\.\/\w+(\/lean)?$/.test(path));
};

let known;
/** Every name that calc exports, and the face that it is imported from. */
async function places() {
  known ??= (async () => {
    const found = new Map();
    for (const face of faces()) {
      const module = await import(pathToFileURL(at("packages", "calc", "dist", face.slice(2), "index.js")).href);
      const place = `@meshwright/calc${face.slice(1)}`;
      const source = readFileSync(at("packages", "calc", "src", face.slice(2), "index.ts"), "utf8");
      for (const [, name] of source.matchAll(/\btype (\w+)(?=[,\s}])/g))
        if (!found.has(name)) found.set(name, { place, isType: true });
      for (const [, list] of source.matchAll(/export type \{([^}]*)\}/g))
        for (const name of list.match(/\w+/g) ?? []) if (!found.has(name)) found.set(name, { place, isType: true });
      for (const name of Object.keys(module)) if (!found.has(name)) found.set(name, { place });
    }
    return found;
  })();
  return known;
}

/** Names that a piece of code uses and does not bring itself. */
function freeNames(code) {
  const source = ts.createSourceFile("example.ts", code, ts.ScriptTarget.Latest, true);
  const [used, own] = [new Set(), new Set()];
  const visit = (node) => {
    const { parent } = node;
    if (ts.isIdentifier(node)) {
      const isOwn =
        (ts.isVariableDeclaration(parent) ||
          ts.isParameter(parent) ||
          ts.isFunctionDeclaration(parent) ||
          ts.isBindingElement(parent)) &&
        parent.name === node;
      const isName =
        (ts.isPropertyAccessExpression(parent) && parent.name === node) ||
        (ts.isPropertyAssignment(parent) && parent.name === node) ||
        (ts.isBindingElement(parent) && parent.propertyName === node);
      if (isOwn || ts.isImportSpecifier(parent)) own.add(node.text);
      else if (!isName) used.add(node.text);
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return [...used].filter((name) => !own.has(name));
}

/**
 * The example with an import for every name of calc in it.
 * @param {string} code
 */
export async function withImports(code) {
  const byFace = new Map();
  const found = await places();
  for (const name of freeNames(code)) {
    const one = found.get(name);
    if (one) byFace.set(one.place, [...(byFace.get(one.place) ?? []), one.isType ? `type ${name}` : name]);
  }
  const lines = [...byFace]
    .sort(([one], [other]) => one.localeCompare(other))
    .map(([place, names]) => `import { ${names.sort().join(", ")} } from "${place}";`);
  return [...lines, code].join("\n");
}

/** Whether an example is about names that others can import. */
export async function isPublic(code) {
  const found = await places();
  const own = new Set([...Object.getOwnPropertyNames(globalThis), "const", "undefined"]);
  return freeNames(code).every((name) => found.has(name) || own.has(name) || ["Map", "Promise"].includes(name));
}

/** A line of an example that says what it comes to: `expression; // => value`, or `expression; // throws code`. */
export const outcomeIn = (line) => {
  const match = /^(\s*)(.*?);?\s*\/\/\s*(=>|throws)\s+(.*)$/.exec(line);
  return match ? { expression: match[2], kind: match[3], outcome: match[4] } : undefined;
};
