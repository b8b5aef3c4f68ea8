// Jekyll: a site with its usual theme and feed, as a folder on the author's disk.
import assert from "node:assert/strict";
import { readFileSync, readdirSync, rmSync } from "node:fs";
import { join } from "node:path";
import { excerptReads, feedReads, previewReads, readsAlive, readsStill } from "../lib/reading.js";
import { wayOf } from "../lib/way.js";

export const needs = {
  programs: ["jekyll", "bundler", "jekyll-theme-minima", "ruby-jekyll-feed", "ruby-jekyll-seo-tag"],
};
export const made = "jekyll";

/** An empty site, as the system's own command makes it, with the theme and the feed that come with it. */
async function site(t, folder, origin) {
  await t.run("jekyll", ["new", t.folder(folder), "--skip-bundle"]);
  await t.run("bundle", ["install", "--local"], { cwd: t.folder(folder) });
  const settings = t.read(`${folder}/_config.yml`).replace(/^url: .*$/m, `url: "${origin}"\nshow_excerpts: true`);
  t.write(`${folder}/_config.yml`, settings);
  // What it welcomes with is deleted, as the welcome says.
  for (const name of readdirSync(t.folder(folder, "_posts"))) rmSync(t.folder(folder, "_posts", name));
}

const post = (text) => `---\nlayout: post\ntitle: Limpet\n---\n\n${text}`;
const file = "2026-10-03-limpet.md";
const built = (t, folder) =>
  t.run("bundle", ["exec", "jekyll", "build", "--quiet", "-d", t.folder("public")], {
    cwd: t.folder(folder),
    env: { JEKYLL_ENV: "production" },
  });

export async function run(t, { post: written }) {
  const origin = await t.serve("public");
  const page = `${origin}/2026/10/03/limpet.html`;

  await site(t, "site", origin);
  const way = wayOf(t, "jekyll");
  t.installFrom(way.next().codes[0], "site");
  const [line, end, path, asked] = way.next().codes;
  const [command, ...words] = asked.split(" ");
  const theme = (await t.run(command, words, { cwd: t.folder("site") })).trim();
  t.write(`site/${path}`, readFileSync(join(theme, path), "utf8").replace(end, `${line}\n${end}`));
  t.write(`site/${way.next().codes[0]}/${file}`, post(written("markdown")));
  assert.deepEqual(way.next().codes, ["bundle exec jekyll build", "bundle exec jekyll serve"]);
  await built(t, "site");
  await readsAlive(t, page, { inside: ".post-content" });
  way.end();

  const more = ["A later remark."];
  t.write(`site/_posts/${file}`, post(written("markdown", more)));
  for (let n = 0; n < 3; n++) await built(t, "site");
  await readsAlive(t, page, { inside: ".post-content", more, place: "page, edited and made again" });

  await feedReads(t, `${origin}/feed.xml`);
  excerptReads(t, await (await fetch(`${origin}/`)).text());

  await previewReads(t, {
    start: (port) => ["bundle", "exec", "jekyll", "serve", "--port", `${port}`],
    cwd: t.folder("site"),
    path: "/2026/10/03/limpet.html",
    inside: ".post-content",
    save: (later) => t.write(`site/_posts/${file}`, post(written("markdown", later))),
  });

  await site(t, "bare", origin);
  t.write(`bare/_posts/${file}`, post(written("markdown")));
  await built(t, "bare");
  await readsStill(t, page, { inside: ".post-content", place: "page, nothing installed" });
}
