// The guide's pages about elements: the gallery, the table of tags, parts, custom properties, events, script files.
import { readFileSync } from "node:fs";
import { evaluate } from "@meshwright/calc/evaluate";
import { figureOf } from "@meshwright/calc/report";
import { elementsOf, manifestOf } from "../lib/manifest.js";
import { at, filesBelow, isSource } from "../lib/paths.js";
import { registeredBy } from "../lib/script-files.js";
import { exhibits, order, ownBuild } from "./exhibits.js";
import { capital, code, escaped, prose, snippet, table } from "./html.js";

/** Every element, an article's own first. */
export async function elements() {
  const sources = at("packages", "elements", "src");
  const all = elementsOf(await manifestOf({ sources, paths: filesBelow(sources, isSource) }));
  const missing = all.filter(({ tagName }) => !order.includes(tagName));
  if (missing.length > 0)
    throw new Error(`scripts/guide/exhibits.js has no example of ${missing.map(({ tagName }) => tagName).join(", ")}.`);
  return all.sort((one, other) => order.indexOf(one.tagName) - order.indexOf(other.tagName));
}

/** The words that an attribute takes, where it takes no others, or some of them. */
function wordsOf({ text }) {
  const words = [...text.matchAll(/"([^"]+)"/g)].map(([, word]) => code(word));
  if (text === "boolean") return "there or not";
  if (words.length === 0) return text.includes("number") ? "a number" : "text";
  return text.includes("string &")
    ? `${words.join(", ")}, or another`
    : words.length > 12
      ? '<a href="figures.html">a figure</a>'
      : words.join(", ");
}

const filled = (html, evaluation) =>
  html.replace(/\{([\w-]+)((?: \w+=[\w.-]+)*)\}/g, (_, figure, asked) =>
    figureOf(evaluation, {
      figure,
      ...Object.fromEntries(
        asked
          .trim()
          .split(" ")
          .filter(Boolean)
          .map((one) => one.split("=")),
      ),
    }),
  );

/** One element of the gallery: alive, its tag to copy, and all that it takes. */
function exhibit({ tagName, description, attributes, events, cssParts }, evaluation) {
  const html = filled(exhibits[tagName], evaluation);
  // What is said of the front axle goes for every other one.
  const isOther = ({ name }) => tagName === "mw-build" && /^(middle|rear|left|right|drive)(-|$)/.test(name);
  const taken = attributes
    .filter((one) => !isOther(one))
    .map(({ name, description: about, type }) => [code(name), capital(prose(about)), wordsOf(type)]);
  return [
    `<section class="exhibit"><h2 id="${tagName}">${code(`<${tagName}>`)}</h2><p>${prose(description)}</p>`,
    `<div class="live">${html}</div>`,
    snippet(html, "html"),
    table(["Attribute", "What it says", "Takes"], taken),
    table(
      ["Event", "When"],
      events.map(({ name, description: about }) => [code(name), capital(prose(about))]),
    ),
    table(
      ["Part", "What it is"],
      cssParts.map(({ name, description: about }) => [code(name), capital(prose(about))]),
    ),
    "</section>",
  ].join("");
}

/** The gallery: what has a build of its own first, then the article's build, then everything about that. */
export function galleryMade(all, build, source) {
  const evaluation = evaluate(build);
  const isOwn = ({ tagName }) => ownBuild.includes(tagName);
  const shown = (list) => list.map((one) => exhibit(one, evaluation)).join("");
  const holder = `<section><h2>The build of the rest</h2><p>What follows is about Limpet, the tractor of the article, whose whole <a href="build.html">document</a> stands here in the page. Change a count anywhere: everything follows.</p><mw-build id="limpet"><script type="application/json">\n${source}</script></mw-build></section>`;
  return `${shown(all.filter(isOwn))}${holder}${shown(all.filter((one) => !isOwn(one)))}`;
}

export const tagsMade = (all) =>
  table(
    ["Tag", "For"],
    all.map(({ tagName, description }) => [
      `<a href="elements.html#${tagName}">${code(tagName)}</a>`,
      prose(/^.*?[.;:](?=\s|$)/.exec(description)?.[0].replace(/[;:]$/, ".") ?? description),
    ]),
  );

export const partsMade = (all) =>
  table(
    ["Element", "Parts"],
    all
      .filter(({ cssParts }) => cssParts.length > 0)
      .map(({ tagName, cssParts }) => [
        `<a href="elements.html#${tagName}">${code(tagName)}</a>`,
        cssParts.map(({ name, description }) => `${code(name)} ${prose(description)}`).join("; "),
      ]),
  );

/** The custom properties, each with a field to try it by. */
export function propertiesMade(all) {
  const { cssProperties } = all.find(({ cssProperties: own }) => own.length > 0);
  const rows = cssProperties.map(({ name, description, default: standard }) => [
    code(name),
    capital(prose(description)),
    standard.startsWith("var(") ? "as the accent" : code(standard),
    `<input type="color" value="#0b5c6b" aria-label="${escaped(name)}" data-property="${name}" />`,
  ]);
  return table(["Property", "Colour of", "Where it is not set", "Try it"], rows);
}

export function eventsMade(all) {
  const events = new Map();
  for (const { tagName, events: own } of all)
    for (const { name, type, description } of own) {
      const known = events.get(name) ?? { type: type.text, description, tags: [] };
      known.tags.push(`<a href="elements.html#${tagName}">${code(tagName)}</a>`);
      events.set(name, known);
    }
  return table(
    ["Event", "When", "<code>detail</code>", "Raised by"],
    [...events]
      .sort(([one], [other]) => one.localeCompare(other))
      .map(([name, { type, description, tags }]) => [
        code(name),
        capital(prose(description)),
        code(/<(.*)>$/.exec(type)[1]),
        tags.join(", "),
      ]),
  );
}

/** Which file holds which elements; sizes and hashes are filled in by the page, from what was built. */
export function filesMade() {
  const list = (source) =>
    registeredBy(source)
      .map((tag) => `<a href="elements.html#${tag}">${code(tag)}</a>`)
      .join(", ");
  const row = (file, about) => [
    `<a href="../meshwright/${file}" download>${code(file)}</a>`,
    about,
    `<span data-file="${file}"></span>`,
  ];
  return table(
    ["File", "Holds", "Size and hash"],
    [
      row("meshwright-article.js", `${list("article.ts")}; it brings the next two from beside itself`),
      row("meshwright-second.js", "keys beside counts, sets, all figures, other languages: what a hand needs"),
      row(
        "meshwright-third.js",
        `${list("third.ts")}; builds in attributes, links, and what is wrong for whoever writes the article`,
      ),
      row("meshwright.js", `everything: ${list("all.ts")}`),
    ],
  );
}

const languageFiles = () =>
  filesBelow(at("packages", "elements", "src", "languages", "words"), (path) => /[\\/][a-z]{2,3}\.ts$/.test(path)).map(
    (path) => /([a-z]+)\.ts$/.exec(path)[1],
  );

export function languagesMade() {
  const names = new Intl.DisplayNames("en", { type: "language" });
  const known = languageFiles();
  const list = known.map((name) => names.of(name)).sort((one, other) => one.localeCompare(other));
  const tables = [
    ["figures", "figures and verdicts"],
    ["words", "what an article’s own elements say besides"],
    ["findings", "what is wrong with a build"],
    ["reports", "tables, cards and drawings"],
    ["tools", "what the tools’ controls say"],
  ];
  const rows = tables.map(([name, about]) => [
    code(`${name}-….js`),
    about,
    known
      .filter((language) => language !== "en")
      .map((language) => `<a href="../meshwright/${name}-${language}.js" download>${language}</a>`)
      .join(", "),
  ]);
  return `<p>There are words in ${new Intl.ListFormat("en").format(list)}; in any other language the elements speak English, with that language’s numbers. A language is fetched when something on the page stands in it, and not before: keep its files beside the script. Where they are not to be had, English stays.</p>${table(["File", "Holds", "Languages"], rows)}`;
}

/** The text of a file of the tests, to show what was tried. */
export const shownFile = (path, language) => snippet(readFileSync(at(...path.split("/")), "utf8"), language);
