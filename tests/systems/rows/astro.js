// Astro: a site of a layout and a Markdown file, with the component around the post.
import assert from "node:assert/strict";
import { symlinkSync } from "node:fs";
import { basename } from "node:path";
import { npmCommand, npmFolder } from "../lib/bring.js";
import { excerptReads, feedReads, previewReads, readsAlive, readsStill } from "../lib/reading.js";
import { wayOf } from "../lib/way.js";

export const needs = { npm: true };
export const made = "astro";

const layout = `---
const { frontmatter } = Astro.props;
---
<!doctype html>
<html lang="en"><head><meta charset="utf-8" /><title>{frontmatter.title}</title></head>
<body><main><slot /></main></body></html>
`;

/** The layout with what a README gives: lines for its head, and what stands in the place of the slot. */
function layoutWith(block) {
  const [, head, inside] = /^---\n([^]*?)---\n+([^]*)$/.exec(block);
  return layout.replace("---\n", `---\n${head}`).replace("<slot />", inside);
}

const feed = `export async function GET() {
  const posts = Object.values(import.meta.glob("./*.md", { eager: true }));
  const escaped = (text) => text.replace(/&/g, "&amp;").replace(/</g, "&lt;");
  const entries = await Promise.all(posts.map(async (post) => "<entry><title>" + post.frontmatter.title + '</title><content type="html">' + escaped(await post.compiledContent()) + "</content></entry>"));
  return new Response('<?xml version="1.0"?><feed xmlns="http://www.w3.org/2005/Atom"><title>The shore log</title>' + entries.join("") + "</feed>");
}
`;

function site(t, folder) {
  t.write(`${folder}/package.json`, '{ "type": "module" }\n');
  // What Astro itself brings to a page lies outside of this site, since `node_modules` is a link.
  t.write(`${folder}/astro.config.mjs`, "export default { vite: { server: { fs: { strict: false } } } };\n");
  t.write(`${folder}/src/layouts/Post.astro`, layout);
  t.write(`${folder}/src/pages/feed.xml.js`, feed);
  symlinkSync(npmFolder("node_modules"), t.folder(folder, "node_modules"));
}

const post = (text) => `---\ntitle: Limpet\nlayout: ../layouts/Post.astro\n---\n\n${text}`;
const built = (t, folder, code = 0) =>
  t.run(
    process.execPath,
    [npmCommand("astro", "astro"), "build", "--root", t.folder(folder), "--outDir", t.folder("public")],
    {
      cwd: t.folder(folder),
      env: { ASTRO_TELEMETRY_DISABLED: "1" },
      code,
    },
  );

export async function run(t, { post: written }) {
  const origin = await t.serve("public");
  const page = `${origin}/limpet/`;

  site(t, "site");
  const way = wayOf(t, "astro");
  const [component, marks, from, , components, scripts, publicFolder] = way.next().codes;
  for (const file of [component, marks]) t.installFrom(`${from}/${file}`, `site/${components}/${file}`);
  t.installFrom(`${from}/${scripts}`, `site/${publicFolder}/${basename(scripts)}`);
  t.write("site/src/layouts/Post.astro", layoutWith(way.next().block));
  way.next();
  t.write("site/src/pages/limpet.md", post(written("markdown")));
  assert.deepEqual(way.next().codes, ["npx astro build", "npx astro dev"]);
  await built(t, "site");
  await readsAlive(t, page, { inside: "main" });
  way.end();

  const more = ["A later remark."];
  t.write("site/src/pages/limpet.md", post(written("markdown", more)));
  for (let n = 0; n < 2; n++) await built(t, "site");
  await readsAlive(t, page, { inside: "main", more, place: "page, edited and made again" });
  await feedReads(t, `${origin}/feed.xml`);
  excerptReads(
    t,
    await (
      await fetch(`${origin}/feed.xml`)
    )
      .text()
      .then((text) => /<content[^>]*>([^]*?)<\/content>/.exec(text)[1].replace(/&lt;/g, "<").replace(/&amp;/g, "&")),
    { place: "compiled content" },
  );

  await previewReads(t, {
    start: (port) => [
      process.execPath,
      npmCommand("astro", "astro"),
      "dev",
      "--port",
      `${port}`,
      "--host",
      "127.0.0.1",
    ],
    cwd: t.folder("site"),
    env: { ASTRO_TELEMETRY_DISABLED: "1" },
    path: "/limpet/",
    inside: "main",
    save: (later) => t.write("site/src/pages/limpet.md", post(written("markdown", later))),
    reloads: "told",
  });

  t.write("site/src/pages/limpet.md", post(written("markdown").replace('of="front"', 'fo="front"')));
  const told = await built(t, "site", 1);
  assert.match(told, /limpet.*no attribute fo; the nearest: .*of/s);
  t.found("a slip in an attribute", "ends the making of the site, with the page and the nearest name");

  site(t, "bare");
  t.write("bare/src/pages/limpet.md", post(written("markdown")));
  await built(t, "bare");
  await readsStill(t, page, { inside: "main", place: "page, nothing installed" });
}
