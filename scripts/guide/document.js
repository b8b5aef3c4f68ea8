// The guide's pages about the build document and its notation: every kind of stage, every field with its meaning and an
// example, every attribute.
import { readFileSync } from "node:fs";
import { readBuild, scalarTexts } from "@meshwright/calc/document";
import { shapes, stageShape } from "@meshwright/calc/drivetrain";
import { evaluate } from "@meshwright/calc/evaluate";
import { figureOf } from "@meshwright/calc/report";
import { notations, samples, stageShapes } from "@meshwright/calc/stages";
import { examples } from "../../demo/examples.js";
import { everyField } from "../../demo/fields.js";
import { descriptions } from "../lib/descriptions.js";
import { at } from "../lib/paths.js";
import { capital, code, escaped, prose, snippet, table } from "./html.js";

/** A shape's letters in words. */
function shapeText(letters) {
  const bare = letters.replace(/!$/, "");
  const [, item, , most] = /^\[(.+)\](\d+)-(\d+)$/.exec(bare) ?? [];
  const [, entry] = /^\{(.+)\}$/.exec(bare) ?? [];
  const one = (name) =>
    name === "any"
      ? "a value"
      : name === "stage"
        ? '<a href="#kinds-of-stage">a stage</a>'
        : (scalarTexts[name] ?? (shapes[name] ? `<a href="#shape-${name}">${name}</a>` : name));
  if (bare === "flag") return "true or false";
  if (item) return `a list of up to ${Number(most).toLocaleString("en")}: ${one(item)}`;
  if (entry) return `by id or address: ${one(entry)}`;
  return bare.includes("|") ? bare.split("|").map(code).join(" or ") : one(bare);
}

const objectIn = (letters) =>
  letters
    .replace(/!$/, "")
    .replace(/^\[(.+)\]\d+-\d+$/, "$1")
    .replace(/^\{(.+)\}$/, "$1");

/** The first value of every field in some builds, by `object.field`. */
function fieldExamples(builds = everyField) {
  const found = new Map();
  const take = (name, shape, value) => {
    for (const [field, letters] of Object.entries(shape)) {
      if (value?.[field] === undefined) continue;
      const key = `${name}.${field}`;
      if (!found.has(key)) found.set(key, value[field]);
      const object = objectIn(letters);
      const inside = Array.isArray(value[field])
        ? value[field]
        : letters.startsWith("{")
          ? Object.values(value[field])
          : [value[field]];
      for (const one of inside)
        if (object === "stage") {
          if (one?.kind) take(`${one.kind}-stage`, stageShape(one.kind), one);
        } else if (shapes[object]) take(object, shapes[object], one);
    }
  };
  for (const build of [...builds, ...["limpet", "dunlin", "turnstone"].map(seed)]) take("build", shapes.build, build);
  for (const one of Object.values(examples)) take(`${one.kind}-stage`, stageShape(one.kind), one);
  for (const kind of Object.keys(stageShapes))
    take(`${kind}-stage`, stageShape(kind), { id: kind, kind, ...samples[kind] });
  return found;
}

const seed = (name) => JSON.parse(readFileSync(at("seeds", `${name}.json`), "utf8"));

/** An example on one line: the inside of what is large is left to its own table. */
function exampleText(key, value) {
  if (value === undefined) throw new Error(`No build of demo/fields.js says ${key}.`);
  const text = JSON.stringify(value).replace(/([:,])(?=["[{\d-])/g, "$1 ");
  if (text.length <= 60) return code(text);
  return Array.isArray(value) ? "[ … ]" : "{ … }";
}

function fieldsTable(name, shape, { fields, found }) {
  return table(
    ["Field", "What it means", "Takes", "Example"],
    Object.entries(shape).map(([field, letters]) => [
      code(field),
      `${capital(prose(fields[name][field]))}${letters.endsWith("!") ? " <em>Must be there.</em>" : ""}`,
      shapeText(letters),
      exampleText(
        `${name}.${field}`,
        found.get(`${name}.${field}`) ?? found.get(name.replace(/^.*(?=-stage$)/, "pair") + `.${field}`),
      ),
    ]),
  );
}

/** Everything about kinds and objects, by the name of what is made. */
export async function documentMade() {
  const { objects, fields } = await descriptions();
  const said = { fields, found: fieldExamples() };
  const kinds = Object.keys(stageShapes).map((kind) => {
    const example = examples[kind] ?? { id: kind, kind, ...samples[kind] };
    const { build } = readBuild({
      format: "meshwright-build/1",
      stages: [example],
      outputs: [{ id: "wheel", stages: [] }],
    });
    const written = notations[kind]?.write(example);
    return [
      `<section><h3 id="kind-${kind}">${code(kind)}</h3><p>${prose(objects[`${kind}-stage`])}</p>`,
      snippet(JSON.stringify(example, null, 2), "json"),
      `<p>Reduction: ${figureOf(evaluate(build), { figure: "reduction" })}.${written ? ` In attributes: ${code(written)}.` : ""}</p>`,
      fieldsTable(`${kind}-stage`, stageShape(kind), said),
      "</section>",
    ].join("");
  });
  const others = Object.entries(shapes).map(([name, shape]) =>
    [
      `<section><h3 id="shape-${name}">${name}</h3>`,
      objects[name] ? `<p>${prose(objects[name])}</p>` : "",
      fieldsTable(name, shape, said),
      "</section>",
    ].join(""),
  );
  return { kinds: kinds.join(""), shapes: others.join("") };
}

/** The forms of every kind in a list of stages. */
export const formsMade = () =>
  table(
    ["Kind", "Written", "Comes to"],
    Object.entries(notations).flatMap(([kind, notation]) =>
      (notation?.examples ?? []).map((example) => {
        const fields = notation.parse(example.toLowerCase());
        const { build } = readBuild({
          format: "meshwright-build/1",
          stages: [{ id: "one", kind, ...fields }],
          outputs: [{ id: "wheel", stages: [] }],
        });
        return [
          `<a href="build.html#kind-${kind}">${code(kind)}</a>`,
          code(example),
          build ? figureOf(evaluate(build), { figure: "reduction" }) : "",
        ];
      }),
    ),
  );

/** Every attribute of a build, as the element's doc comment has it. */
export const notationMade = (all) =>
  table(
    ["Attribute", "What it says"],
    all
      .find(({ tagName }) => tagName === "mw-build")
      .attributes.filter(({ name }) => !/^(middle|rear|left|right|drive)\b/.test(name) && name !== "build")
      .map(({ name, description }) => [code(name), capital(prose(description))]),
  );

/** The files in which what is wrong is told, each sentence with its code. */
export function findingsMade() {
  const source = readFileSync(at("packages", "calc", "src", "stages", "finding.ts"), "utf8");
  const body = /const findingTexts = \{([^]*?)\n\} as const/.exec(source)?.[1] ?? "";
  const sections = [];
  for (const line of body.replace(/:\n\s+/g, ": ").split("\n")) {
    const [, head] = /^\s*\/\/ (.+)$/.exec(line) ?? [];
    if (head) sections.push({ head, rows: [] });
    const [, name, sentence] =
      /^\s*"?([\w-]+)"?: (?:"((?:[^"\\]|\\.)*)"|'((?:[^'\\]|\\.)*)'),?$/.exec(
        line.replace(/: '(.*)',?$/, (_, one) => `: ${JSON.stringify(one)},`),
      ) ?? [];
    if (name)
      sections.at(-1)?.rows.push([
        code(name),
        escaped(JSON.parse(`"${sentence}"`))
          .replace(/\{(\w+)\}/g, "<em>$1</em>")
          .replace(/[[\]]/g, ""),
      ]);
  }
  return sections.map(({ head, rows }) => `<h3>${escaped(head)}</h3>${table(["Code", "Sentence"], rows)}`).join("");
}
