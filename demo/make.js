// node demo/make.js: writes into the article its build, from seeds, and into the guide's pages what can be read off the
// code: elements, figures, kinds of stage.
// What is made stands between <!-- made: name --> and <!-- end -->; everything else in the pages is written by hand.
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { format, resolveConfig } from "prettier";
import { scalarTexts } from "@meshwright/calc/document";
import { shapes, stageShape } from "@meshwright/calc/drivetrain";
import { readBuild } from "@meshwright/calc/document";
import { evaluate } from "@meshwright/calc/evaluate";
import { notations, samples, stageShapes } from "@meshwright/calc/stages";
import { figureOf, figureSpecs, queryNames, units } from "@meshwright/calc/report";
import { examples, queries } from "./examples.js";

const limpet = readFileSync(new URL("../seeds/limpet.json", import.meta.url), "utf8");
const here = fileURLToPath(new URL(".", import.meta.url));
const packages = fileURLToPath(new URL("../packages/", import.meta.url));

const escaped = (text) => text.replace(/&/g, "&amp;").replace(/</g, "&lt;").replace(/>/g, "&gt;");
/** Words of a doc comment as HTML: what stands in backticks is code. */
const prose = (text) =>
  escaped(text)
    .split(/`([^`]+)`/)
    .map((part, n) =>
      n % 2 ? `<code>${part}</code>` : part.replace(/(\w)'(\w|\s)/g, "$1’$2").replace(/"([^"=]+)"/g, "“$1”"),
    )
    .join("");
const code = (text) => `<code>${escaped(text)}</code>`;
const capital = (text) => text.charAt(0).toUpperCase() + text.slice(1);
const row = (cells) =>
  `<tr><th scope="row">${cells[0]}</th>${cells
    .slice(1)
    .map((cell) => `<td>${cell}</td>`)
    .join("")}</tr>`;
const table = (heads, rows) =>
  `<table><thead><tr>${heads.map((head) => `<th scope="col">${head}</th>`).join("")}</tr></thead><tbody>${rows.map(row).join("")}</tbody></table>`;

/** The doc comment's text before `end`, as lines without their stars. */
function commentBefore(source, end) {
  const start = source.lastIndexOf("/**", end);
  return source
    .slice(start + 3, source.indexOf("*/", start))
    .split("\n")
    .map((line) => line.replace(/^\s*\* ?/, "").trimEnd());
}

/** An element's description and its tagged lines: attributes, events, parts. */
function elementIn(source) {
  const tag = /static override readonly tag = "(mw-[a-z-]+)"/.exec(source)?.[1];
  if (!tag) return undefined;
  const lines = commentBefore(source, source.indexOf("export class Mw"));
  // A tagged line may go on in the next one, and hold several tags with a dot between them.
  const joined = lines.join("\n").replace(/\n(?!@|\n|$)/g, " ");
  const [description = ""] = joined.trim().split(/\n+@/);
  const tagged = [...joined.replace(/ · @/g, "\n@").matchAll(/^@(attr|fires|csspart) (.+)$/gm)];
  const of = (kind) =>
    tagged
      .filter((one) => one[1] === kind)
      .map((one) => {
        const [, name, text] = /^(?:\{.*\} )?([\w-]+) - (.*)$/.exec(one[2]);
        return [code(name), capital(prose(text))];
      });
  return {
    tag,
    description: description.replaceAll("\n", " "),
    attributes: of("attr"),
    events: of("fires"),
    parts: of("csspart"),
  };
}

const folders = (path) => readdirSync(path, { withFileTypes: true }).filter((one) => one.isDirectory());

/** An article's own first, then what goes deeper; whatever is new comes last. */
const order = [
  ...["build", "teeth", "value", "quantity", "ratio-summary", "overdrive-gauge", "edits"],
  ...["stage-editor", "train-drawing", "drive-line", "pair-finder", "count-finder", "train-finder", "change-table"],
  ...["wheel-speed", "working", "order-list", "parts-list", "bench-card"],
  ...["measurements", "unmarked-gear", "turn-count"],
].map((name) => `mw-${name}`);
const place = ({ tag }) => (order.includes(tag) ? order.indexOf(tag) : order.length);

/** Every element that the whole script registers. */
function elementsMade() {
  const sources = join(packages, "elements", "src", "elements");
  const registered = readFileSync(join(sources, "..", "all.ts"), "utf8");
  return folders(sources)
    .flatMap(({ name }) => readdirSync(join(sources, name)).map((file) => join(sources, name, file)))
    .filter((file) => /mw-[a-z-]+\.ts$/.test(file) && !file.endsWith(".test.ts"))
    .map((file) => readFileSync(file, "utf8"))
    .filter((source) => registered.includes(/export class (Mw\w+)/.exec(source)?.[1] ?? "none"))
    .map(elementIn)
    .filter((one) => one !== undefined)
    .sort((one, other) => place(one) - place(other) || one.tag.localeCompare(other.tag));
}

function elementSection({ tag, description, attributes, events, parts }) {
  return [
    `<section><h2 id="${tag}">${code(`<${tag}>`)}</h2><p>${prose(description)}</p>`,
    attributes.length ? table(["Attribute", "What it says"], attributes) : "",
    events.length ? table(["Event", "When"], events) : "",
    parts.length ? table(["Part", "What it is"], parts) : "",
    "</section>",
  ].join("");
}

const takes = {
  of: {
    output: "an output",
    "output-or-stage": "an output or a stage",
    stage: "a stage",
    pair: "a pair of gears",
    address: "an address",
  },
  with: "the other output",
  group: "a group",
  base: "one of the two outputs, or <code>mean</code>",
  from: "a version",
  over: { length: "a length", turns: "turns" },
  digits: "0 to 100",
};

/** What a figure takes, an attribute a line, each with its words. */
function taken(spec) {
  const list = (words) => words.map(code).join(", ");
  const words = {
    scope: ["tyres", "gears"],
    sign: ["none"],
    unit: units[spec.unit],
    measure: spec.measure,
    drive: spec.drive,
  };
  return queryNames
    .filter((name) => spec[name] !== undefined)
    .map((name) => `${code(name)}: ${words[name] ? list(words[name]) : (takes[name][spec[name]] ?? takes[name])}`)
    .join("<br />");
}

/** The figures by name, each with its doc comment, what it takes, and what it comes to for Limpet. */
function figuresMade(build) {
  const text = readFileSync(join(packages, "calc", "src", "report", "vocabulary.ts"), "utf8");
  const docs = new Map(
    [...text.matchAll(/\/\*\*((?:(?!\*\/)[^])*)\*\/\s+(?:"([\w-]+)"|(\w+)): \{/g)].map((one) => [
      one[2] ?? one[3],
      one[1].replace(/\s*\n\s*\* ?/g, " ").trim(),
    ]),
  );
  const evaluation = evaluate(build);
  return table(
    ["Figure", "What it is", "What it takes"],
    Object.entries(figureSpecs).map(([figure, spec]) => {
      const query = queries[figure] ?? {};
      const asked = Object.entries(query)
        .map(([name, value]) => `${name}="${value}"`)
        .join(" ");
      return [
        code(figure),
        `${capital(prose(docs.get(figure) ?? ""))}<br />${asked ? `${code(asked)}: ` : ""}<samp>${escaped(figureOf(evaluation, { ...query, figure }))}</samp>`,
        taken(spec),
      ];
    }),
  );
}

/** A shape's letters in words. */
function shapeText(shape) {
  const needed = shape.endsWith("!");
  const bare = shape.replace(/!$/, "");
  const [, item] = /^\[(.+)\]/.exec(bare) ?? [];
  const [, entry] = /^\{(.+)\}$/.exec(bare) ?? [];
  const one = (name) =>
    name === "any" ? "a value" : (scalarTexts[name] ?? (shapes[name] ? `<a href="#shape-${name}">${name}</a>` : name));
  const text =
    bare === "flag"
      ? "true or false"
      : item
        ? `a list: ${one(item)}`
        : entry
          ? `by id or address: ${one(entry)}`
          : bare.includes("|")
            ? bare.split("|").map(code).join(" or ")
            : one(bare);
  return needed ? `${text} <em>(must be there)</em>` : text;
}

const fieldsTable = (shape) =>
  table(
    ["Field", "What it holds"],
    Object.entries(shape).map(([name, letters]) => [code(name), shapeText(letters)]),
  );

function kindsMade() {
  const common = stageShape("pair");
  const folder = join(packages, "calc", "src", "stages");
  const sources = readdirSync(folder).map((file) => readFileSync(join(folder, file), "utf8"));
  return Object.entries(stageShapes)
    .map(([name, shape]) => {
      const source = sources.find((text) => text.includes(`readonly kind: "${name}";`));
      const description = commentBefore(source, source.search(/export interface \w+Stage/))
        .join(" ")
        .trim();
      const example = examples[name] ?? { id: name, kind: name, ...samples[name] };
      const { build } = readBuild({
        format: "meshwright-build/1",
        stages: [example],
        outputs: [{ id: "wheel", stages: [] }],
      });
      const comes = figureOf(evaluate(build), { figure: "reduction" });
      const written = notations[name]?.write(example);
      return [
        `<section><h3 id="kind-${name}">${code(name)}</h3><p>${prose(description)}</p>`,
        `<pre><code>${escaped(JSON.stringify(example, null, 2))}</code></pre>`,
        `<p>Reduction: ${comes}.${written ? ` In attributes: ${code(written)}.` : ""}</p>`,
        fieldsTable(
          Object.fromEntries(
            Object.entries(shape).filter(([field]) => !(field in common) || name === "pair" || field in shape),
          ),
        ),
        "</section>",
      ].join("");
    })
    .join("");
}

const shapesMade = () =>
  Object.entries(shapes)
    .map(([name, shape]) => `<section><h3 id="shape-${name}">${name}</h3>${fieldsTable(shape)}</section>`)
    .join("");

function propertiesMade() {
  const styles = readFileSync(join(packages, "elements", "src", "shared", "element", "styles.ts"), "utf8");
  const meaning = {
    "--mw-accent": "What can be changed or pressed",
    "--mw-fault": "What is wrong",
    "--mw-second": "Notes and captions",
    "--mw-line": "Fine lines",
    "--mw-paper": "What lies over the text: trays, heads of columns",
    "--mw-ring": "The ring around what has the focus",
  };
  return table(
    ["Property", "Colour of", "Where it is not set"],
    [...styles.matchAll(/var\((--mw-[\w-]+), ((?:[^()]|\([^()]*\))+)\)/g)].map(([, name, value]) => [
      code(name),
      meaning[name] ?? "",
      value.startsWith("var(") ? "as the accent" : code(value),
    ]),
  );
}

function languagesMade() {
  const words = readdirSync(join(packages, "elements", "src", "languages", "words")).filter((name) =>
    /^[a-z]{2,3}\.ts$/.test(name),
  );
  const names = new Intl.DisplayNames("en", { type: "language" });
  const list = words.map((name) => names.of(name.replace(".ts", ""))).sort((one, other) => one.localeCompare(other));
  return `<p>There are words in ${new Intl.ListFormat("en").format(list)}; in any other language the elements speak English, with that language’s numbers. A language is fetched when something on the page stands in it, and not before: keep its files beside the script, <code>figures-de.js</code> for figures and verdicts, <code>words-de.js</code> for what an article’s own elements say besides, <code>reports-de.js</code> and <code>tools-de.js</code> for tables, cards and the rest. Where they are not to be had, English stays.</p>`;
}

const engineNames = { node: "Node", chromium: "Chromium", firefox: "Firefox", webkit: "WebKitGTK" };
const listed = (words) => new Intl.ListFormat("en").format(words);

/** What came of the last whole run in other people's software, by subject. */
function hostsMade() {
  const { versions, rows } = JSON.parse(readFileSync(new URL("../tests/hosts/results.json", import.meta.url), "utf8"));
  const tried = listed(Object.entries(engineNames).map(([name, words]) => `${words} ${versions[name]}`));
  const held = rows.filter(({ impossible }) => !impossible).length;
  const outcome = ({ impossible, elsewhere }) =>
    impossible ? `Not possible: ${impossible}` : `Holds${elsewhere ? `; ${elsewhere}` : ""}`;
  const triedWith = ({ software, engines }) =>
    [software.join(", "), engines.map((name) => engineNames[name]).join(", ")].filter(Boolean).join(" · ");
  const cells = (row) => [
    String(row.row ?? "+"),
    `${prose(row.title)}<br /><small>${escaped(triedWith(row))}</small>`,
    prose(outcome(row)),
  ];
  const sections = [...new Set(rows.map(({ subject }) => subject))].map((subject) => {
    const mine = rows.filter((row) => row.subject === subject).map(cells);
    return `<section class="hosts"><h2>${prose(subject)}</h2>${table(["No.", "What goes wrong elsewhere, and what it was tried with", "Here"], mine)}</section>`;
  });
  return `<p>The last whole run: ${held} of ${rows.length} hold, in ${escaped(tried)}.</p>${sections.join("")}`;
}

/** What is made, by name. */
function made() {
  const { build } = readBuild(limpet);
  const elements = elementsMade();
  return {
    elements: elements.map(elementSection).join(""),
    tags: table(
      ["Tag", "For"],
      elements.map(({ tag, description }) => [
        `<a href="elements.html#${tag}">${code(tag)}</a>`,
        prose(/^.*?[.;:](?=\s|$)/.exec(description)?.[0].replace(/[;:]$/, ".") ?? description),
      ]),
    ),
    figures: figuresMade(build),
    kinds: kindsMade(),
    shapes: shapesMade(),
    properties: propertiesMade(),
    languages: languagesMade(),
    hosts: hostsMade(),
  };
}

/** The article with its build inside, and the guide's pages, by their paths in this folder, as they should stand. */
export async function pages() {
  const parts = made();
  const options = await resolveConfig(here);
  const guide = readdirSync(join(here, "guide")).filter((name) => name.endsWith(".html"));
  const paths = ["index.html", ...guide.map((name) => `guide/${name}`)];
  return Object.fromEntries(
    await Promise.all(
      paths.map(async (path) => {
        const text = readFileSync(join(here, path), "utf8")
          .replace(
            /(<script type="application\/json">)[^]*?(<\/script>)/,
            (_, open, close) => `${open}\n${limpet}${close}`,
          )
          .replace(
            /(<!-- made: (\w+) -->)[^]*?(<!-- end -->)/g,
            (_, open, part, close) => `${open}\n${parts[part]}\n${close}`,
          );
        return [path, await format(text, { ...options, parser: "html" })];
      }),
    ),
  );
}

/** Writes them. */
export async function writePages() {
  for (const [path, text] of Object.entries(await pages())) writeFileSync(join(here, path), text);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await writePages();
