// MkDocs: pages in docs, with its own theme and search.
import assert from "node:assert/strict";
import { previewReads, readsAlive, readsStill, searchReads } from "../lib/reading.js";
import { wayOf } from "../lib/way.js";

export const needs = { programs: ["mkdocs"] };
export const made = "mkdocs";

const settings = "site_name: The shore log\ntheme:\n  name: mkdocs\n  highlightjs: false\n";

function site(t, folder) {
  t.write(`${folder}/mkdocs.yml`, settings);
  t.write(`${folder}/docs/index.md`, "# The shore log\n\nWhat was measured.\n");
}

const post = (text) => `# Limpet\n\n${text}`;
const built = (t, folder, { code = 0, more = [] } = {}) =>
  t.run("mkdocs", ["build", "--clean", "-d", t.folder("public"), ...more], { cwd: t.folder(folder), code });

export async function run(t, { post: written }) {
  const origin = await t.serve("public");
  const page = `${origin}/limpet/`;

  site(t, "site");
  const way = wayOf(t, "mkdocs");
  const [from, , , folder] = way.next().codes;
  t.installFrom(from, `site/${folder}`);
  const { codes, block } = way.next();
  t.write(`site/${codes[0]}`, `${settings}${block}\n`);
  t.write(`site/${way.next().codes[0]}/limpet.md`, post(written("markdown")));
  assert.deepEqual(way.next().codes, ["mkdocs build", "mkdocs serve"]);
  await built(t, "site", { more: ["--strict"] });
  await readsAlive(t, page, { inside: '[role="main"]' });
  way.end();

  const more = ["A later remark."];
  t.write("site/docs/limpet.md", post(written("markdown", more)));
  for (let n = 0; n < 3; n++) await built(t, "site");
  await readsAlive(t, page, { inside: '[role="main"]', more, place: "page, edited and made again" });

  const { docs } = await (await fetch(`${origin}/search/search_index.json`)).json();
  searchReads(
    t,
    docs
      .filter(({ location }) => location.startsWith("limpet"))
      .map(({ text }) => text)
      .join(" "),
  );

  await previewReads(t, {
    start: (port) => ["mkdocs", "serve", "-a", `127.0.0.1:${port}`],
    cwd: t.folder("site"),
    path: "/limpet/",
    inside: '[role="main"]',
    save: (later) => t.write("site/docs/limpet.md", post(written("markdown", later))),
    reloads: "asks",
  });

  t.write("site/docs/limpet.md", post(written("markdown").replace('of="front"', 'fo="front"')));
  const told = await built(t, "site", { code: 1, more: ["--strict"] });
  assert.match(told, /limpet\.md.*no attribute fo/s);
  t.found("a slip in an attribute", "is a warning with the file and the nearest name, and ends a strict build");

  site(t, "bare");
  t.write("bare/docs/limpet.md", post(written("markdown")));
  await built(t, "bare");
  await readsStill(t, page, { inside: '[role="main"]', place: "page, nothing installed" });
}
