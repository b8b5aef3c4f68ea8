// The custom elements' manifest of a package: its doc comments as the analyzer reads them, with the closed tables of words
// that calc holds.
import { readFileSync } from "node:fs";
import { relative } from "node:path";
import { pathToFileURL } from "node:url";
import { create, ts } from "@custom-elements-manifest/analyzer";
import { at } from "./paths.js";

/** A folder of calc as it was built. */
const calc = (folder) => import(pathToFileURL(at("packages", "calc", "dist", folder, "index.js")).href);

/** A class carries its name in a static field. */
const tagsFromStatics = {
  name: "tags-from-statics",
  analyzePhase({ ts: compiler, node, moduleDoc }) {
    if (node.kind !== compiler.SyntaxKind.ClassDeclaration) return;
    const field = node.members.find((member) => member.name?.getText() === "tag");
    const tagName = field?.initializer?.text;
    const declaration = moduleDoc.declarations.find(({ name }) => name === node.name?.getText());
    if (tagName && declaration) Object.assign(declaration, { tagName, customElement: true });
  },
};

/** The words that an attribute takes: no others, or any besides (`open`). */
async function wordTables() {
  const [{ figureSpecs, units, scopes, drives }, { wantedFigures }, { shapes }] = await Promise.all(
    ["report", "article", "drivetrain"].map(calc),
  );
  const closed = (words) => ({ words: [...new Set(words)], open: false });
  const open = (...words) => ({ words, open: true });
  const measures = Object.values(figureSpecs).flatMap(({ measure = [] }) => measure);
  return {
    "": { at: open("article") },
    "mw-value": {
      figure: closed(Object.keys(figureSpecs)),
      base: open("front", "rear", "mean"),
      scope: closed(scopes),
      from: open("article"),
      measure: closed(measures),
      unit: closed(Object.values(units).flat()),
      sign: closed(["none"]),
      drive: closed(drives),
    },
    "mw-overdrive-gauge": { base: open("front", "rear", "mean"), scope: closed(scopes) },
    "mw-count-finder": { figure: closed(wantedFigures) },
    "mw-wheel-speed": { unit: closed(units.speed) },
    "mw-change-table": { against: open("article") },
    "mw-order-list": { from: open("article", "nothing") },
    "mw-build": { centre: open("spool", "differential"), lengths: closed(shapes.build.lengths.split("|")) },
  };
}

/** What an attribute takes, as a type. */
function typeOf({ words, open } = {}, declared = "") {
  if (words) return [...words.map((word) => JSON.stringify(word)), ...(open ? ["(string & {})"] : [])].join(" | ");
  if (/\bboolean\b/.test(declared)) return "boolean";
  if (/\bunknown\b/.test(declared)) return "object | string";
  return /\bnumber\b/.test(declared) ? "number | string" : "string";
}

/** A name that stands for all axles is written of one: the others are said to be alike. */
function everyAxle(attributes, axleNames) {
  const described = new Map(attributes.map((one) => [one.name, one]));
  return attributes.flatMap((one) => {
    const [, part] = /^front(-wheel|-motor)?$/.exec(one.name) ?? [];
    if (one.name !== `front${part ?? ""}`) return [one];
    return axleNames
      .map((axle) => ({ ...one, name: `${axle}${part ?? ""}` }))
      .filter((other) => other.name === one.name || !described.has(other.name));
  });
}

/** What a page may ask of an element; the rest is between elements. */
const forPages = ["findings", "checked", "link", "focus", "updateComplete"];

/** A description's lines as one. */
const line = (text = "") => text.replace(/\s*\n\s*/g, " ").trim();

function tidied(declaration, tables, { axleNames }) {
  const {
    tagName,
    attributes = [],
    members = [],
    events = [],
    slots = [],
    cssParts = [],
    cssProperties = [],
  } = declaration;
  const of = (list) =>
    list.map(({ name, type, description, default: standard }) => ({
      name,
      ...(type && { type }),
      description: line(description),
      ...(standard !== undefined && { default: standard }),
    }));
  const own = tables[tagName] ?? {};
  const fields = new Map(members.map((member) => [member.name, member]));
  const wanted = attributes.map(({ name, description }) => ({
    name,
    description: line(description),
    type: { text: typeOf(own[name] ?? tables[""][name], fields.get(name)?.type?.text) },
    ...(fields.has(name) && { fieldName: name }),
  }));
  return {
    kind: "class",
    name: declaration.name,
    tagName,
    customElement: true,
    description: declaration.description.replace(/(?<!\n)\n(?!\n)/g, " "),
    superclass: { name: "HTMLElement" },
    attributes: tagName === "mw-build" ? everyAxle(wanted, axleNames) : wanted,
    members: members
      .filter(({ name }) => forPages.includes(name))
      .map(({ kind, name, type, description, return: result, parameters }) => ({
        ...{ kind, name, description: line(description) },
        ...(type && { type }),
        ...(result && { return: result }),
        ...(parameters && {
          parameters: parameters.map(({ name: parameter, type: its }) => ({
            name: parameter,
            ...(its && { type: its }),
          })),
        }),
        ...(kind === "field" && { readonly: true }),
      })),
    events: of(events.filter(({ name, description }) => name && description)).sort((one, other) =>
      one.name.localeCompare(other.name),
    ),
    slots: of(slots),
    cssParts: of(cssParts),
    cssProperties: of(cssProperties),
  };
}

/**
 * The manifest of a package's elements, made from its sources.
 * @param {{ sources: string, paths: string[], tags?: string[] }} package its folder of sources, and the files in it; where only
 *   some of its elements are for others, their names
 */
export async function manifestOf({ sources, paths, tags }) {
  const { axleNames } = await calc("document");
  const tables = await wordTables();
  const modules = paths.map((path) =>
    ts.createSourceFile(relative(sources, path), readFileSync(path, "utf8"), ts.ScriptTarget.Latest, true),
  );
  const { modules: found } = create({ modules, plugins: [tagsFromStatics] });
  const isWanted = ({ tagName }) => tagName && (!tags || tags.includes(tagName));
  return {
    schemaVersion: "1.0.0",
    readme: "README.md",
    modules: found
      .filter(({ declarations }) => declarations.some(isWanted))
      .map(({ path, declarations }) => {
        const made = `dist/${path.replace(/\\/g, "/").replace(/\.ts$/, ".js")}`;
        const shown = declarations.filter(isWanted);
        return {
          kind: "javascript-module",
          path: made,
          declarations: shown.map((one) => tidied(one, tables, { axleNames })),
          exports: shown.map(({ name }) => ({ kind: "js", name, declaration: { name, module: made } })),
        };
      })
      .sort((one, other) => one.path.localeCompare(other.path)),
  };
}

/** All elements of a manifest, each with the module that it stands in. */
export const elementsOf = (manifest) =>
  manifest.modules.flatMap(({ path, declarations }) => declarations.map((one) => ({ ...one, module: path })));
