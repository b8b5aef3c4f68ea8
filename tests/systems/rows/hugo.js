// Hugo: a site with a theme's layouts, as a folder on the author's disk.
import assert from "node:assert/strict";
import { readdirSync } from "node:fs";
import { excerptReads, feedReads, previewReads, readsAlive, readsStill } from "../lib/reading.js";
import { wayOf } from "../lib/way.js";

export const needs = { programs: ["hugo"] };
export const made = "hugo";

/** A theme as authors have one: a frame that every page goes through, one layout for a page and one for lists. */
const theme = {
  baseof: `<!doctype html>
<html lang="en"><head><meta charset="utf-8"><title>{{ .Title }}</title></head>
<body>
<main>{{ block "main" . }}{{ end }}</main>
</body></html>
`,
  single: '{{ define "main" }}<h1>{{ .Title }}</h1>{{ .Content }}{{ end }}\n',
  list: '{{ define "main" }}{{ range site.RegularPages }}<section class="excerpt">{{ .Summary }}</section>{{ end }}{{ end }}\n',
};

/** An empty site, as the system's own command makes it, with a theme. */
async function site(t, folder, origin, { unsafe = false } = {}) {
  await t.run("hugo", ["new", "site", t.folder(folder)]);
  t.write(
    `${folder}/config.toml`,
    `baseURL = "${origin}/"\ntitle = "The shore log"\ntheme = "shore"\n${unsafe ? "[markup.goldmark.renderer]\nunsafe = true\n" : ""}`,
  );
  for (const [name, text] of Object.entries(theme))
    t.write(`${folder}/themes/shore/layouts/_default/${name}.html`, text);
}

/** Copies the theme's frame into the site, with a line more before the end of the body. */
const copiedFrame = (t, folder, [path, line, end]) =>
  t.write(`${folder}/${path}`, t.read(`${folder}/themes/shore/${path}`).replace(end, `${line}\n${end}`));

const post = (text) => `---\ntitle: Limpet\ndate: 2026-10-03\n---\n\n${text}`;
const built = (t, folder, code = 0) => t.run("hugo", ["-s", t.folder(folder), "-d", t.folder("public")], { code });

export async function run(t, { post: written }) {
  const origin = await t.serve("public");

  await site(t, "site", origin);
  const way = wayOf(t, "hugo");
  t.installFrom(way.next().codes[0], "site");
  const layout = way.next().codes;
  copiedFrame(t, "site", layout);
  t.write(`site/${way.next().codes[0]}/posts/limpet.md`, post(written("shortcodes")));
  assert.deepEqual(way.next().codes, ["hugo", "hugo server"]);
  await built(t, "site");
  await readsAlive(t, `${origin}/posts/limpet/`, { inside: "main" });
  way.end();

  // Edited again, and made ten times.
  const more = ["A later remark."];
  t.write("site/content/posts/limpet.md", post(written("shortcodes", more)));
  for (let n = 0; n < 10; n++) await built(t, "site");
  await readsAlive(t, `${origin}/posts/limpet/`, { inside: "main", more, place: "page, edited and made ten times" });

  await feedReads(t, `${origin}/index.xml`, { whole: false });
  for (const list of ["/posts/", "/"]) {
    const text = await (await fetch(`${origin}${list}`)).text();
    excerptReads(t, text, { place: list === "/" ? "excerpt on the first page" : "excerpt in a list" });
    assert.equal(text.split("meshwright.js").length - 1, 1, "a list that shows figures has the script, once");
  }
  assert.equal(
    readdirSync(t.folder("public", "meshwright")).includes("figures-de.js"),
    true,
    "languages lie beside the script",
  );

  await previewReads(t, {
    start: (port) => ["hugo", "server", "-s", t.folder("site"), "-p", `${port}`, "--baseURL", "http://127.0.0.1"],
    path: "/posts/limpet/",
    inside: "main",
    save: (later) => t.write("site/content/posts/limpet.md", post(written("shortcodes", later))),
    reloads: "told",
  });

  // A slip ends the making, and says where.
  t.write("site/content/posts/limpet.md", post(written("shortcodes").replace('of="front"', 'fo="front"')));
  const told = await built(t, "site", 255);
  assert.match(told, /limpet\.md:\d+:\d+.*mw-value has no attribute fo/);
  t.found("a slip in an attribute", "ends the making of the site, with the file and the line");

  // Without the integration: tags are taken out, and the text stays right; unless the site lets HTML through.
  await site(t, "bare", origin);
  t.write("bare/content/posts/limpet.md", post(written("text")));
  await built(t, "bare");
  await readsStill(t, `${origin}/posts/limpet/`, { inside: "main", place: "page, nothing installed" });
  await site(t, "open", origin, { unsafe: true });
  t.install("hugo", "open");
  copiedFrame(t, "open", layout);
  t.write("open/content/posts/limpet.md", post(written("markdown")));
  await built(t, "open");
  await readsAlive(t, `${origin}/posts/limpet/`, {
    inside: "main",
    place: "page, tags in a site that lets HTML through",
  });
}
