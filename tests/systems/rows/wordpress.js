// WordPress: four roles, three ways of writing, with the plugin and without.
import assert from "node:assert/strict";
import { at } from "../../../scripts/lib/paths.js";
import { elementsOf, excerptReads, feedReads, readsAlive, readsStill, searchReads, wordsOf } from "../lib/reading.js";
import { until } from "../lib/run.js";
import { wayOf } from "../lib/way.js";
import { edit, logIn, openEditor, startWordPress, write } from "../lib/wordpress.js";

export const needs = {
  programs: ["php-cli", "php-mysql", "php-xml", "php-mbstring", "php-gd", "mariadb-server-core", "mariadb-client-core"],
  files: [
    "wordpress",
    "wordpress-theme-twentytwentyone",
    "wordpress-theme-twentytwentythree",
    "libjs-cropper",
    "libjs-underscore",
    "php-getid3",
  ],
};
export const made = "wordpress";

const inside = ".entry-content";
const kept = (site, id) => site.php(`echo get_post(${id})->post_content;`);
/** Installs the plugin as an administrator does: uploads the archive that the README names, and activates it. */
async function installPlugin(t, site, archive) {
  const { page } = await logIn(t, site, "administrator");
  await page.goto(`${site.origin}/wp-admin/plugin-install.php?tab=upload`);
  const field = await page.waitForSelector("#pluginzip");
  await field.uploadFile(at(archive));
  await page.waitForSelector("#install-plugin-submit:not([disabled])");
  await Promise.all([page.waitForNavigation(), page.click("#install-plugin-submit")]);
  const activate = await page.waitForSelector('a[href*="action=activate"]');
  await Promise.all([page.waitForNavigation(), activate.click()]);
  assert.match(await page.evaluate(() => document.body.innerText), /Plugin activated/);
  await page.close();
}

/** The editor's own preview of the post, before anybody has published it. */
async function previewReads(t, page, id, site) {
  const link = await site.php(`echo get_preview_post_link(${id});`);
  await page.goto(link);
  await until(() => page.evaluate(() => alive()), "living figures in the preview");
  t.found("preview", "alive");
}

/** What one role comes to in one way of writing. */
async function written(t, site, role, way, text, { plugin }) {
  const place = `${role}, ${{ paste: "pasted into the editor", html: "Custom HTML", block: "Meshwright block", classic: "classic block" }[way]}${plugin ? "" : ", no plugin"}`;
  const { page, wrong } = await logIn(t, site, role);
  const before = wrong.length;
  const post = await write(page, site, { name: `Limpet by ${role} ${way} ${plugin ? "with" : "without"}`, way, text });
  if (plugin && ["paste", "block"].includes(way)) {
    await openEditor(page, site, post.id);
    await until(async () => {
      for (const frame of page.frames())
        if (
          await frame
            .evaluate(() => !!document.querySelector("mw-value")?.shadowRoot?.querySelector('[part="value"]'))
            .catch(() => false)
        )
          return true;
      return false;
    }, "living figures under the block");
    await page.evaluate(() => document.querySelector(".meshwright-alive").scrollIntoView({ block: "center" }));
    await t.picture?.(page, "editor");
    t.found(`${place}: in the editor`, "alive");
  }
  const complaints = wrong.slice(before).filter((line) => /meshwright|mw-/i.test(line));
  assert.deepEqual(complaints, [], `${place}: nothing of ours in the editor's console`);
  if (post.status === "pending") {
    await previewReads(t, page, post.id, site);
    const chief = await logIn(t, site, "administrator");
    await openEditor(chief.page, site, post.id);
    await chief.page.evaluate(async () => {
      const { editPost, savePost } = window.wp.data.dispatch("core/editor");
      await editPost({ status: "publish" });
      await savePost();
    });
    await until(
      () => chief.page.evaluate(() => window.wp.data.select("core/editor").isCurrentPostPublished()),
      "it is published",
    );
    post.link = await chief.page.evaluate(() => window.wp.data.select("core/editor").getPermalink());
    await chief.page.close();
  }
  return { ...post, page, place };
}

export async function run(t, { post: notebook }) {
  const site = await startWordPress(t);
  const html = notebook("html");
  const line = `<script src="${site.origin}/wp-content/uploads/meshwright.js"></script>`;

  // Nothing installed: who may post any HTML has living figures by the script's line, everybody else has text.
  t.copy(at("dist", "integrations", "wordpress", "meshwright", "script"), "wp/wp-content/uploads");
  const alone = await written(t, site, "administrator", "html", `${html}${line}\n`, { plugin: false });
  await alone.page.close();
  await readsAlive(t, alone.link, { inside, place: alone.place });
  for (const role of ["author"]) {
    const post = await written(t, site, role, "html", html, { plugin: false });
    await post.page.close();
    assert.deepEqual(elementsOf(await kept(site, post.id)), [], "WordPress takes the tags out");
    await readsStill(t, post.link, { inside, place: post.place });
  }
  const classic = await written(t, site, "editor", "classic", html, { plugin: false });
  await classic.page.close();
  await readsStill(t, classic.link, { inside, place: classic.place });

  const readme = wayOf(t, "wordpress");
  const archive = readme.next().codes[1];
  assert.match(readme.next().text, /Activate Plugin/);
  await installPlugin(t, site, archive);

  const wanted = elementsOf(html);
  for (const words of [/choose \*\*WordPress\*\*/, /and paste/, /\*\*Publish\*\*/])
    assert.match(readme.next().text, words);
  const all = [
    ["administrator", "paste"],
    ["administrator", "block"],
    ["administrator", "classic"],
    ["editor", "html"],
    ["editor", "classic"],
    ["author", "paste"],
    ["author", "html"],
    ["contributor", "paste"],
  ];
  let last;
  for (const [role, way] of all) {
    const post = await written(t, site, role, way, html, { plugin: true });
    assert.deepEqual(
      elementsOf(await kept(site, post.id)),
      wanted,
      `${post.place}: every element is kept, with its attributes`,
    );
    await readsAlive(t, post.link, { inside, place: post.place });
    if (role === "administrator" && way === "paste") readme.end();
    if (role === "author" && way === "paste") {
      const words = "A later remark.";
      await edit(post.page, site, post.id, words, 2);
      await readsAlive(t, post.link, { inside, more: [words], place: `${post.place}, edited and saved twice` });
      await edit(post.page, site, post.id, "And another.", 8);
      assert.deepEqual(elementsOf(await kept(site, post.id)), wanted, "nothing is doubled after the tenth save");
      await readsAlive(t, post.link, {
        inside,
        more: [words, "And another."],
        place: `${post.place}, saved ten times`,
      });
      last = post;
    } else await post.page.close();
  }

  // What is saved by those who may not post scripts holds none, and no value that leads anywhere else.
  const evil =
    '<p>Safe <mw-value of="front" onclick="alert(1)" style="position:fixed">44.30</mw-value> and <mw-value fo="front">44.30</mw-value></p><mw-build src="javascript:alert(1)"></mw-build><mw-build stages="A: 1 to 2" axle-third="B: 3 to 4"><script type="application/json">{}</script></mw-build>';
  const attack = await write(last.page, site, { name: "Attack", way: "html", text: evil });
  const stored = await kept(site, attack.id);
  assert.doesNotMatch(stored, /<script|onclick|style=|javascript:|fo=/);
  assert.match(stored, /axle-third="B: 3 to 4"/, "an axle of another name is kept");
  assert.match(
    stored,
    /Safe 44\.30 and 44\.30/,
    "an element with an attribute that it does not have is left as its text",
  );
  t.found("scripts, handlers and foreign addresses from an author", "taken out as the post is saved");
  await site.php(`wp_delete_post(${attack.id}, true);`);
  await last.page.close();

  // Feed, excerpt, search, REST, revision.
  await site.php(
    `foreach (get_posts(['numberposts' => -1, 'post_status' => 'any', 'exclude' => [${last.id}]]) as $p) wp_delete_post($p->ID, true);`,
  );
  await feedReads(t, `${site.origin}/feed/`);
  const rest = await (await fetch(`${site.origin}/wp-json/wp/v2/posts/${last.id}`)).json();
  excerptReads(t, rest.excerpt.rendered);
  searchReads(t, wordsOf(rest.content.rendered), { place: "REST" });
  const found = await (await fetch(`${site.origin}/?s=44.30`)).text();
  assert.match(found, /Limpet by author/);
  t.found("search", "finds the post by a figure in it");
  const revision = await site.php(`echo end(wp_get_post_revisions(${last.id}))->post_content;`);
  assert.deepEqual(elementsOf(revision), wanted);
  t.found("revision", "keeps every element");

  // The block theme that comes with it.
  await site.php("switch_theme('twentytwentythree');");
  await readsAlive(t, last.link, {
    inside,
    more: ["A later remark.", "And another."],
    place: "page in a theme of blocks",
  });

  // Taken out again: the post is what the notebook copied, and reads right.
  await site.php(
    "require_once ABSPATH . 'wp-admin/includes/plugin.php'; require_once ABSPATH . 'wp-admin/includes/file.php'; deactivate_plugins('meshwright/meshwright.php'); delete_plugins(['meshwright/meshwright.php']);",
  );
  const after = await kept(site, last.id);
  assert.doesNotMatch(after, /wp:meshwright|plugins\/meshwright/);
  assert.match(
    await site.php(
      "global $wpdb; echo 'left: ' . $wpdb->get_var(\"SELECT COUNT(*) FROM $wpdb->options WHERE option_name LIKE '%meshwright%'\");",
    ),
    /left: 0$/,
  );
  await readsStill(t, last.link, {
    inside,
    more: ["A later remark.", "And another."],
    place: "page after the plugin is deleted",
  });
}
