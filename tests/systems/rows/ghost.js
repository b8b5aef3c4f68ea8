// Ghost: a card of HTML in its editor, with nothing installed but the script's files.
import assert from "node:assert/strict";
import { versionOfGhost } from "../lib/bring.js";
import { edit, kept, logIn, publish, startGhost, write } from "../lib/ghost.js";
import { elementsOf, excerptReads, feedReads, readsAlive, readsStill, searchReads, wordsOf } from "../lib/reading.js";
import { until } from "../lib/run.js";

export const needs = { programs: ["mariadb-server-core", "mariadb-client-core"], ghost: true };
export const version = versionOfGhost;

const inside = ".gh-content";
const line = '<script src="/assets/meshwright/meshwright.js" defer></script>';

export async function run(t, { post: notebook }) {
  const site = await startGhost(t);
  const html = notebook("html");
  const { page } = await logIn(t, site);

  // Nothing at hand: the post is text.
  const bare = await write(page, site, "Limpet in text", html);
  await publish(page, site, bare);
  await readsStill(t, (await kept(page, site, bare)).url, { inside, place: "page, without the script" });
  await page.evaluate((url) => fetch(url, { method: "DELETE" }), `${site.origin}/ghost/api/admin/posts/${bare}/`);

  t.step(
    "Copy `meshwright.js`, and the files of its languages beside it, into the theme’s folder `assets/meshwright`. What is uploaded as a file is handed out as no script.",
  );
  t.install("mkdocs/script", "content/themes/source/assets/meshwright");
  t.step("Posts, New post: write a title, press Enter, type `/html` and press Enter. A card of HTML opens.");
  t.step("Paste what the notebook copies for Ghost.");
  t.step(`Write \`${line}\` on the last line of the card.`);
  const id = await write(page, site, "Limpet", `${html}${line}\n`);
  await t.picture(page, "editor");

  // The draft's own preview, before anybody has published it.
  const draft = await kept(page, site, id);
  assert.equal(draft.status, "draft");
  const preview = await t.window({ own: false });
  await preview.page.goto(draft.url);
  await until(() => preview.page.evaluate(() => alive()), "living figures in the preview");
  t.found("preview", "alive");
  await preview.page.close();

  t.step("Publish, Continue, Publish post, right now.");
  await publish(page, site, id);
  const { url } = await kept(page, site, id);
  await readsAlive(t, url, { inside });

  const wanted = elementsOf(html);
  const [first, last] = ["A later remark.", "Another remark."];
  await edit(page, site, id, first, 2);
  await readsAlive(t, url, { inside, more: [first], place: "page, edited and saved twice" });
  await edit(page, site, id, last, 8);
  const now = await kept(page, site, id);
  assert.deepEqual(elementsOf(now.html), wanted, "nothing is doubled after the tenth save");
  await readsAlive(t, url, { inside, more: [first, last], place: "page, saved ten times" });

  await feedReads(t, `${site.origin}/rss/`);
  excerptReads(t, now.excerpt);
  const list = await (await fetch(`${site.origin}/`)).text();
  assert.ok(list.includes("Limpet"), "the post stands in the list of the first page");
  searchReads(t, wordsOf(now.html.replace(/<script[^]*?<\/script>/g, "")), { place: "interface for programs" });
}
