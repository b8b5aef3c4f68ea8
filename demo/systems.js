// The guide's page about blogs and wikis, from what a run of `npm run test:systems` wrote down.
import { existsSync, readFileSync } from "node:fs";
import { systems } from "@meshwright/calc/article";

const escaped = (text) => text.replace(/&/g, "&amp;").replace(/</g, "&lt;").replace(/>/g, "&gt;");
const capital = (text) => text.charAt(0).toUpperCase() + text.slice(1);

const handedOut = {
  html: "one block of HTML",
  markdown: "Markdown, its elements as tags",
  shortcodes: "Markdown, its elements as shortcodes",
  text: "text, every figure as it reads today",
};

/** What came of a place where a post is read, in words. */
const said = (outcome) =>
  ({ alive: "Alive: figures follow a change", text: "Your text, every figure right" })[outcome] ?? capital(outcome);

/** A step as the README has it: code between backticks, a button's name between stars, a block of code on the lines below. */
function step(text) {
  const [words, ...block] = escaped(text).split("\n");
  const marked = words.replace(/`([^`]+)`/g, "<code>$1</code>").replace(/\*\*([^*]+)\*\*/g, "<strong>$1</strong>");
  return `<li>${marked}${block.length > 0 ? `<pre><code>${block.join("\n")}</code></pre>` : ""}</li>`;
}

const pictures = { editor: "The post in the editor", page: "The post as a visitor sees it" };

/** What a window showed, where a run has kept it. */
const shown = (name, title) =>
  Object.entries(pictures)
    .filter(([what]) => existsSync(new URL(`guide/systems/${name}-${what}.jpg`, import.meta.url)))
    .map(
      ([what, words]) =>
        `<figure><img src="systems/${name}-${what}.jpg" width="1000" height="640" loading="lazy" alt="${words}, in ${title}" /><figcaption>${words}.</figcaption></figure>`,
    )
    .join("");

function section(name, { version, steps = [], outcomes = [], impossible }) {
  const { name: title, writing, integration } = systems[name];
  const head = `<h2 id="${name}">${title}${version ? ` ${version}` : ""}</h2>`;
  if (impossible) return `<section class="hosts">${head}<p>Not tried: ${escaped(impossible)}.</p></section>`;
  const install = integration
    ? `What lies in <code>integrations/${integration}</code> is installed once.`
    : "Nothing is installed.";
  const isWay = ({ place }) => place.startsWith("the way");
  const way = outcomes.find(isWay);
  const rows = outcomes
    .filter((one) => !isWay(one))
    .map(
      ({ place, outcome }) =>
        `<tr><th scope="row">${escaped(capital(place))}</th><td>${escaped(said(outcome))}</td></tr>`,
    )
    .join("");
  return `<section class="hosts">${head}<p>The notebook hands out ${handedOut[writing]}. ${install}</p>
    <ol>${steps.map(step).join("")}</ol>${way ? `<p>Walked as it stands here, from an empty site: ${escaped(way.outcome)}.</p>` : ""}
    <table><thead><tr><th scope="col">Where it is read</th><th scope="col">What a reader finds</th></tr></thead><tbody>${rows}</tbody></table>${shown(name, title)}</section>`;
}

/** Where a post is read besides on its own page, by how the runs name the places. */
const readings = {
  Preview: /^preview/,
  Feed: /^feed/,
  "Excerpt or list": /^(excerpt|compiled content)/,
  "Search or interface": /^(search|REST|interface)/,
};

/** What a reader finds there, in a word; what a system does not have was not read. */
function read(outcomes, place) {
  const found = outcomes.filter((one) => place.test(one.place)).map(({ outcome }) => outcome);
  return found.includes("alive") ? "Alive" : found.length > 0 ? "Text" : "–";
}

/** What the guide's page holds. */
export function systemsMade() {
  const results = JSON.parse(readFileSync(new URL("../tests/systems/results.json", import.meta.url), "utf8"));
  const names = Object.keys(systems).filter((name) => results[name]);
  const summary = names
    .filter((name) => results[name].outcomes)
    .map((name) => {
      const { name: title, writing, without = writing } = systems[name];
      const { outcomes } = results[name];
      const cells = [
        read(outcomes, /./),
        without === "text" || writing === "text" ? "Text" : "Your text, in its tags",
        ...Object.values(readings).map((place) => read(outcomes, place)),
      ];
      return `<tr><th scope="row"><a href="#${name}">${title}</a></th>${cells.map((cell) => `<td>${cell}</td>`).join("")}</tr>`;
    });
  const heads = ["System", "The post", "With nothing installed", ...Object.keys(readings)];
  return `<div class="wide" tabindex="0" role="group" aria-label="What lives where"><table><thead><tr>${heads.map((head) => `<th scope="col">${head}</th>`).join("")}</tr></thead><tbody>${summary.join("")}</tbody></table></div>${names.map((name) => section(name, results[name])).join("")}`;
}
