// The guide's page about figures: each alive, as a complete tag to copy, with all that it takes.
import { readFileSync } from "node:fs";
import { evaluate } from "@meshwright/calc/evaluate";
import { figureOf, figureSpecs, queryNames, units } from "@meshwright/calc/report";
import { at } from "../lib/paths.js";
import { queries } from "../../demo/examples.js";
import { capital, code, escaped, prose, snippet, table } from "./html.js";

const takes = {
  of: {
    output: "an axle",
    "output-or-stage": "an axle or a stage",
    stage: "a stage",
    pair: "a pair of gears",
    address: "an address",
  },
  with: "the other axle",
  group: "a group",
  base: "one of the two axles, or <code>mean</code>",
  from: "a version",
  over: { length: "a length", turns: "turns" },
  digits: "0 to 100",
};

/** What a figure takes, an attribute a row, each with its words. */
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
    .map((name) => [code(name), words[name] ? list(words[name]) : (takes[name][spec[name]] ?? takes[name])]);
}

const needed = {
  target: "a target",
  "two-outputs": "two axles",
  wheel: "a wheel",
  wheelbase: "the wheelbase",
  differential: "a differential",
  pitch: "the pitch of the gears",
  mount: "a mount",
  motor: "a motor",
  battery: "a battery",
};

/** The doc comments of the figures, by name. */
function comments() {
  const text = readFileSync(at("packages", "calc", "src", "report", "vocabulary.ts"), "utf8");
  return new Map(
    [...text.matchAll(/\/\*\*((?:(?!\*\/)[^])*)\*\/\s+(?:"([\w-]+)"|(\w+)): \{/g)].map((one) => [
      one[2] ?? one[3],
      one[1].replace(/\s*\n\s*\* ?/g, " ").trim(),
    ]),
  );
}

export function figuresMade(build) {
  const docs = comments();
  const evaluation = evaluate(build);
  return Object.entries(figureSpecs)
    .map(([figure, spec]) => {
      const query = queries[figure] ?? {};
      const attributes = Object.entries({ figure, ...query }).map(([name, value]) => ` ${name}="${value}"`);
      const tag = `<mw-value${attributes.join("")}>${escaped(figureOf(evaluation, { ...query, figure }))}</mw-value>`;
      const needs = (spec.needs ?? []).map((need) => needed[need]);
      return [
        `<section><h2 id="figure-${figure}">${code(figure)}</h2>`,
        `<p>${capital(prose(docs.get(figure) ?? ""))}${needs.length ? ` The build has to say ${new Intl.ListFormat("en").format(needs)}.` : ""}</p>`,
        `<p class="live">${tag}</p>`,
        snippet(tag, "html"),
        table(["Attribute", "Takes"], taken(spec)),
        "</section>",
      ].join("");
    })
    .join("");
}
