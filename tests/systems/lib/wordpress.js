// A WordPress with a database of its own, and the ways in which people write in it.
import assert from "node:assert/strict";
import { unpacked } from "./bring.js";
import { startDatabase } from "./database.js";
import { delay, freePort, until } from "./run.js";

const password = "a-shore-of-waders-2026";

const settings = (socket, origin, folder) => `<?php
define('DB_NAME', 'log'); define('DB_USER', 'log'); define('DB_PASSWORD', 'log');
define('DB_HOST', 'localhost:${socket}'); define('DB_CHARSET', 'utf8mb4'); define('DB_COLLATE', '');
${["AUTH_KEY", "SECURE_AUTH_KEY", "LOGGED_IN_KEY", "NONCE_KEY", "AUTH_SALT", "SECURE_AUTH_SALT", "LOGGED_IN_SALT", "NONCE_SALT"].map((name) => `define('${name}', 'the ${name} of a log that is thrown away');`).join(" ")}
define('WP_HOME', '${origin}'); define('WP_SITEURL', '${origin}');
define('WP_CONTENT_DIR', '${folder}/wp-content'); define('WP_HTTP_BLOCK_EXTERNAL', true); define('DISABLE_WP_CRON', true);
define('AUTOMATIC_UPDATER_DISABLED', true); define('FS_METHOD', 'direct'); define('WP_DEBUG', true); define('WP_DEBUG_DISPLAY', false);
define('WP_DEBUG_LOG', '${folder}/debug.log');
$table_prefix = 'wp_';
if (!defined('ABSPATH')) define('ABSPATH', '${folder}/');
require_once ABSPATH . 'wp-settings.php';
`;

const setUp = `<?php
define('WP_INSTALLING', true);
$_SERVER['HTTP_HOST'] = '127.0.0.1';
require __DIR__ . '/wp-load.php';
require_once ABSPATH . 'wp-admin/includes/upgrade.php';
wp_install('The shore log', 'administrator', 'administrator@example.invalid', true, '', '${password}');
foreach (['editor', 'author', 'contributor'] as $role)
  wp_insert_user(['user_login' => $role, 'user_pass' => '${password}', 'user_email' => "$role@example.invalid", 'role' => $role]);
update_option('show_avatars', 0);
update_option('permalink_structure', '/%postname%/');
update_option('default_ping_status', 'closed');
wp_delete_post(1, true);
switch_theme('twentytwentyone');
echo 'done';
`;

/** PHP's own server knows no rewriting: what is no file is WordPress's to answer. */
const router = `<?php
$path = parse_url($_SERVER['REQUEST_URI'], PHP_URL_PATH);
$file = __DIR__ . $path;
if (is_dir($file)) $file = rtrim($file, '/') . '/index.php';
if (is_file($file) && substr($file, -4) !== '.php') return false;
if (is_file($file)) { $_SERVER['SCRIPT_NAME'] = $_SERVER['PHP_SELF'] = substr($file, strlen(__DIR__)); $_SERVER['SCRIPT_FILENAME'] = $file; chdir(dirname($file)); require $file; return true; }
require __DIR__ . '/index.php';
`;

/** An empty site with four people. */
export async function startWordPress(t) {
  const socket = await startDatabase(t);
  t.copy(unpacked("usr", "share", "wordpress"), "wp");
  t.copy(unpacked("var", "lib", "wordpress", "wp-content"), "wp/wp-content");
  for (const theme of ["twentytwentyone", "twentytwentythree"])
    t.copy(unpacked("usr", "share", "wordpress", "wp-content", "themes", theme), `wp/wp-content/themes/${theme}`);
  const port = await freePort();
  const origin = `http://127.0.0.1:${port}`;
  t.write("wp/wp-config.php", settings(socket, origin, t.folder("wp")));
  t.write("wp/router.php", router);
  t.write("wp/set-up.php", setUp);
  const setting = await t.run("php", ["set-up.php"], { cwd: t.folder("wp") });
  assert.ok(setting.endsWith("done"), setting.replace(/<style[^]*?<\/style>/g, "").slice(-1500));
  const server = t.start(
    "php",
    ["-d", "upload_max_filesize=16M", "-d", "post_max_size=16M", "-S", `127.0.0.1:${port}`, "router.php"],
    {
      cwd: t.folder("wp"),
      env: { PHP_CLI_SERVER_WORKERS: "4" },
    },
  );
  await until(
    () => fetch(`${origin}/`).then((answer) => answer.ok),
    () => `WordPress: ${server.said()}`,
    60_000,
  );
  /** Runs PHP inside of WordPress: only to read what is kept. */
  const php = async (code) => {
    t.write(
      "wp/ask.php",
      `<?php $_SERVER['HTTP_HOST'] = '127.0.0.1:${port}'; require __DIR__ . '/wp-load.php'; ${code}`,
    );
    return t.run("php", ["ask.php"], { cwd: t.folder("wp") });
  };
  return { origin, php, debugLog: () => t.read("wp/debug.log") };
}

/** Somebody's window, logged in. */
export async function logIn(t, { origin }, who) {
  const window = await t.window({ own: true });
  const { page } = window;
  await page.goto(`${origin}/wp-login.php`);
  await page.waitForSelector("#user_login");
  await delay(300);
  await page.$eval("#user_login", (field, name) => (field.value = name), who);
  await page.$eval("#user_pass", (field, word) => (field.value = word), password);
  await Promise.all([page.waitForNavigation(), page.click("#wp-submit")]);
  assert.match(page.url(), /wp-admin/, `${who} is let in`);
  return window;
}

/** Opens the editor, for a new post or one that is there. */
export async function openEditor(page, { origin }, post) {
  page.removeAllListeners("dialog");
  page.on("dialog", (dialog) => void dialog.accept().catch(() => undefined));
  await page.goto(post ? `${origin}/wp-admin/post.php?post=${post}&action=edit` : `${origin}/wp-admin/post-new.php`);
  await until(() => page.evaluate(() => !!window.wp?.data?.select("core/editor")?.getCurrentPostId()), "the editor");
  await page.evaluate(() => {
    window.wp.data.dispatch("core/preferences")?.set("core/edit-post", "welcomeGuide", false);
    window.wp.data.dispatch("core/edit-post")?.closeModal?.();
  });
  await page.waitForSelector(".editor-post-title__input, .edit-post-visual-editor__post-title-wrapper h1");
  await delay(500);
}

/** What the clipboard would bring. */
const pasted = (page, text) =>
  page.evaluate((words) => {
    const target = document.activeElement;
    const data = new DataTransfer();
    data.setData("text/plain", words);
    target.dispatchEvent(new ClipboardEvent("paste", { clipboardData: data, bubbles: true, cancelable: true }));
  }, text);

/** Gives the post its title, and puts the caret into the empty paragraph below it. */
async function title(page, words) {
  await page.evaluate((text) => {
    window.wp.data.dispatch("core/editor").editPost({ title: text });
    window.wp.data.dispatch("core/block-editor").insertDefaultBlock();
  }, words);
  const isThere = () =>
    page.evaluate(() => {
      const paragraph = document.activeElement?.closest('[data-type="core/paragraph"]');
      return !!paragraph && document.activeElement.isContentEditable;
    });
  await until(isThere, "the caret in the empty paragraph");
  await delay(500);
}

/** A block by the inserter's own command in an empty paragraph. */
async function insert(page, command) {
  await page.keyboard.type(`/${command}`, { delay: 40 });
  await page.waitForSelector(".components-autocomplete__result");
  await delay(600);
  await page.keyboard.press("Enter");
  await delay(600);
}

/** The ways in which a post comes into the editor. */
const ways = {
  async paste(page, text) {
    await pasted(page, text);
  },
  async html(page, text) {
    await insert(page, "Custom HTML");
    await page.waitForSelector(".block-editor-plain-text");
    await page.focus(".block-editor-plain-text");
    await page.keyboard.sendCharacter(text);
  },
  async block(page, text) {
    await insert(page, "Meshwright");
    await page.waitForSelector(".block-editor-plain-text");
    await page.focus(".block-editor-plain-text");
    await page.keyboard.sendCharacter(text);
  },
  /** In the classic block's own text, by its menu's "Edit as HTML", and back. */
  async classic(page, text) {
    await insert(page, "Classic");
    await page.waitForSelector(".block-library-rich-text__tinymce");
    const toggle = () =>
      page.evaluate(() => {
        const editor = window.wp.data.select("core/block-editor");
        const block = editor.getBlocks().find(({ name }) => name === "core/freeform");
        window.wp.data.dispatch("core/block-editor").toggleBlockMode(block.clientId);
      });
    await delay(1000);
    await toggle();
    await page.waitForSelector(".block-editor-block-list__block-html-textarea");
    await page.focus(".block-editor-block-list__block-html-textarea");
    await page.keyboard.sendCharacter(text);
    await page.evaluate(() => document.activeElement.blur());
    await delay(300);
    await toggle();
    await page.waitForSelector(".block-library-rich-text__tinymce");
    await delay(1500);
    // Somebody writes on in it: what TinyMCE makes of the text is what is saved.
    await page.click(".block-library-rich-text__tinymce p:last-of-type");
    await page.keyboard.press("End");
    await page.keyboard.type(" ");
    await page.evaluate(() => document.activeElement.blur());
    await delay(500);
  },
};

const saved = (page) =>
  until(
    () =>
      page.evaluate(() => {
        const editor = window.wp.data.select("core/editor");
        return !editor.isSavingPost() && !editor.isEditedPostDirty() && editor.didPostSaveRequestSucceed();
      }),
    "the post is saved",
    60_000,
  );

/** Writes a post and publishes it, or hands it in; resolves to its number and address. */
export async function write(page, site, { name, way, text }) {
  await openEditor(page, site);
  await title(page, name);
  await ways[way](page, text);
  await delay(500);
  await page.click(".editor-post-publish-panel__toggle, .editor-post-publish-button__button");
  await page.waitForSelector(".editor-post-publish-panel .editor-post-publish-button");
  await delay(400);
  await page.click(".editor-post-publish-panel .editor-post-publish-button");
  await saved(page);
  return page.evaluate(() => {
    const editor = window.wp.data.select("core/editor");
    return {
      id: editor.getCurrentPostId(),
      link: editor.getPermalink(),
      status: editor.getCurrentPostAttribute("status"),
    };
  });
}

/** Opens a post again, adds a paragraph at its end, and saves it, so many times in all. */
export async function edit(page, site, id, words, times) {
  await openEditor(page, site, id);
  for (let n = 0; n < times; n++) {
    await page.evaluate(
      (text, isFirst) => {
        const { createBlock } = window.wp.blocks;
        const { insertBlock, updateBlockAttributes } = window.wp.data.dispatch("core/block-editor");
        const blocks = window.wp.data.select("core/block-editor").getBlocks();
        if (isFirst) insertBlock(createBlock("core/paragraph", { content: text }), blocks.length);
        else updateBlockAttributes(blocks.at(-1).clientId, { content: text });
      },
      n === times - 1 ? words : `${words} ${n}`,
      n === 0,
    );
    await page.waitForSelector('.editor-post-publish-button:not([aria-disabled="true"])');
    await page.click(".editor-post-publish-button");
    await delay(200);
    await saved(page);
  }
  // Opened once more, it has to be what it was, block by block.
  await openEditor(page, site, id);
  const invalid = await page.evaluate(() =>
    window.wp.data
      .select("core/block-editor")
      .getBlocks()
      .filter(({ isValid }) => !isValid)
      .map(({ name }) => name),
  );
  assert.deepEqual(invalid, [], "no block asks to be recovered");
}
