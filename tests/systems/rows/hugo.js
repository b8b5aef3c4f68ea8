// Hugo: a site with a theme's layouts, as a folder on the author's disk.
import assert from "node:assert/strict";
import { readdirSync } from "node:fs";
import { excerptReads, feedReads, readsAlive, readsStill } from "../lib/reading.js";

export const needs = { programs: ["hugo"] };
export const made = "hugo";

const page = (inside) => `<!doctype html>
<html lang="en"><head><meta charset="utf-8"><title>{{ .Title }}</title></head>
<body><main>${inside}</main>{{ partial "meshwright.html" . }}</body></html>
`;

const withoutOurs = (text) => text.replace('{{ partial "meshwright.html" . }}', "");

function site(t, folder, origin, { layouts = (text) => text, unsafe = false } = {}) {
  t.write(
    `${folder}/config.toml`,
    `baseURL = "${origin}/"\ntitle = "The shore log"\n${unsafe ? "[markup.goldmark.renderer]\nunsafe = true\n" : ""}`,
  );
  t.write(`${folder}/layouts/_default/single.html`, layouts(page("<h1>{{ .Title }}</h1>{{ .Content }}")));
  t.write(
    `${folder}/layouts/_default/list.html`,
    layouts(page('{{ range site.RegularPages }}<section class="excerpt">{{ .Summary }}</section>{{ end }}')),
  );
}

const post = (text) => `---\ntitle: Limpet\ndate: 2026-10-03\n---\n\n${text}`;
const built = (t, folder, code = 0) => t.run("hugo", ["-s", t.folder(folder), "-d", t.folder("public")], { code });

export async function run(t, { post: written }) {
  const origin = await t.serve("public");

  t.step("Copy what lies in dist/integrations/hugo into the site.");
  t.step('Write {{ partial "meshwright.html" . }} before </body> in the layout that every page goes through.');
  t.step("Put what the notebook copies for Hugo below the front matter of a file in content.");
  t.step("Run hugo.");
  site(t, "site", origin);
  t.install("hugo", "site");
  t.write("site/content/posts/limpet.md", post(written("shortcodes")));
  await built(t, "site");
  await readsAlive(t, `${origin}/posts/limpet/`, { inside: "main" });

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

  // A slip ends the making, and says where.
  t.write("site/content/posts/limpet.md", post(written("shortcodes").replace('of="front"', 'fo="front"')));
  const told = await built(t, "site", 255);
  assert.match(told, /limpet\.md:\d+:\d+.*mw-value has no attribute fo/);
  t.found("a slip in an attribute", "ends the making of the site, with the file and the line");

  // Without the integration: tags are taken out, and the text stays right; unless the site lets HTML through.
  site(t, "bare", origin, { layouts: withoutOurs });
  t.write("bare/content/posts/limpet.md", post(written("text")));
  await built(t, "bare");
  await readsStill(t, `${origin}/posts/limpet/`, { inside: "main", place: "page, nothing installed" });
  site(t, "open", origin, { unsafe: true });
  t.install("hugo", "open");
  t.write("open/content/posts/limpet.md", post(written("markdown")));
  await built(t, "open");
  await readsAlive(t, `${origin}/posts/limpet/`, {
    inside: "main",
    place: "page, tags in a site that lets HTML through",
  });
}
