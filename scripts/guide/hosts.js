// The guide's pages about other people's software: what came of the last whole run.
import { readFileSync } from "node:fs";
import { at } from "../lib/paths.js";
import { escaped, prose, table } from "./html.js";

const engineNames = { node: "Node", chromium: "Chromium", firefox: "Firefox", webkit: "WebKitGTK" };
const listed = (words) => new Intl.ListFormat("en").format(words);
const results = () => JSON.parse(readFileSync(at("tests", "hosts", "results.json"), "utf8"));

const outcome = ({ impossible, elsewhere }) =>
  impossible ? `Not possible: ${impossible}` : `Holds${elsewhere ? `; ${elsewhere}` : ""}`;
const triedWith = ({ software, engines }) =>
  [software.join(", "), engines.map((name) => engineNames[name]).join(", ")].filter(Boolean).join(" · ");

/** All of it, by subject. */
export function hostsMade() {
  const { versions, rows } = results();
  const tried = listed(Object.entries(engineNames).map(([name, words]) => `${words} ${versions[name]}`));
  const held = rows.filter(({ impossible }) => !impossible).length;
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

/** Some rows of it, by number: what a piece of advice rests on. */
export function triedMade(numbers) {
  const { rows } = results();
  return table(
    ["Tried", "With", "Here"],
    numbers.map((number) => {
      const row = rows.find((one) => String(one.row) === number);
      if (!row) throw new Error(`There is no row ${number} of other people's software.`);
      return [prose(row.title), escaped(triedWith(row)), prose(outcome(row))];
    }),
  );
}
