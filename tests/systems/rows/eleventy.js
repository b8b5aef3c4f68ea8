// Eleventy: a site of a Markdown file and a layout, with the plugin in its configuration.
import assert from "node:assert/strict";
import { at } from "../../../scripts/lib/paths.js";
import { excerptReads, feedReads, previewReads, readsAlive, readsStill } from "../lib/reading.js";
import { wayOf } from "../lib/way.js";

export const needs = { npm: true };
export const made = "@11ty/eleventy";

const layout =
  '<!doctype html>\n<html lang="en"><meta charset="utf-8"><title>{{ title }}</title><body><main>{{ content | safe }}</main></body></html>\n';
const feed = `---
permalink: feed.xml
eleventyExcludeFromCollections: true
---
<?xml version="1.0"?><feed xmlns="http://www.w3.org/2005/Atom"><title>The shore log</title>
{%- for post in collections.post %}<entry><title>{{ post.data.title }}</title><content type="html">{{ post.templateContent | escape }}</content></entry>{% endfor -%}
</feed>
`;
const list = `---
permalink: index.html
---
{% for post in collections.post %}<section class="excerpt">{{ post.templateContent | striptags | truncate(200) }}</section>{% endfor %}
`;

function site(t, folder) {
  t.write(`${folder}/package.json`, '{ "type": "module" }\n');
  t.write(`${folder}/_includes/article.njk`, layout);
  t.write(`${folder}/feed.njk`, feed);
  t.write(`${folder}/index.njk`, list);
}

const post = (text) => `---\ntitle: Limpet\nlayout: article.njk\ntags: post\n---\n\n${text}`;
const command = () => at(".cache", "systems", "npm", "node_modules", "@11ty", "eleventy", "cmd.cjs");
const built = (t, folder, code = 0) =>
  t.run(process.execPath, [command(), "--quiet", `--output=${t.folder("public")}`], { cwd: t.folder(folder), code });

export async function run(t, { post: written }) {
  const origin = await t.serve("public");
  const page = `${origin}/limpet/`;

  site(t, "site");
  const way = wayOf(t, "eleventy");
  const [from, , folder, ignored, ignoring] = way.next().codes;
  t.installFrom(from, `site/${folder}`);
  t.write(`site/${ignoring}`, `${ignored}\n`);
  const { codes, block } = way.next();
  t.write(`site/${codes[0]}`, `${block}\n`);
  way.next();
  t.write("site/limpet.md", post(written("markdown")));
  assert.deepEqual(way.next().codes, ["npx eleventy", "npx eleventy --serve"]);
  await built(t, "site");
  await readsAlive(t, page, { inside: "main" });
  way.end();

  const more = ["A later remark."];
  t.write("site/limpet.md", post(written("markdown", more)));
  for (let n = 0; n < 3; n++) await built(t, "site");
  await readsAlive(t, page, { inside: "main", more, place: "page, edited and made again" });
  await feedReads(t, `${origin}/feed.xml`);
  excerptReads(t, await (await fetch(`${origin}/`)).text());

  await previewReads(t, {
    start: (port) => [process.execPath, command(), "--serve", `--port=${port}`, `--output=${t.folder("preview")}`],
    cwd: t.folder("site"),
    path: "/limpet/",
    inside: "main",
    save: (later) => t.write("site/limpet.md", post(written("markdown", later))),
    reloads: "told",
  });

  t.write("site/limpet.md", post(written("markdown").replace('of="front"', 'fo="front"')));
  const told = await built(t, "site", 1);
  assert.match(told, /limpet\.md.*no attribute fo; the nearest: .*of/s);
  t.found("a slip in an attribute", "ends the making of the site, with the file and the nearest name");

  site(t, "bare");
  t.write("bare/limpet.md", post(written("markdown")));
  await built(t, "bare");
  await readsStill(t, page, { inside: "main", place: "page, nothing installed" });
}
