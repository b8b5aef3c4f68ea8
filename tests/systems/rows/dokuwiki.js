// DokuWiki: a page written in its editor, by anybody. It takes no tags.
import assert from "node:assert/strict";
import { unpacked } from "../lib/bring.js";
import { readsStill, searchReads, wordsOf } from "../lib/reading.js";
import { freePort, until } from "../lib/run.js";

export const needs = {
  programs: ["php-cli", "php-xml", "php-mbstring", "php-gd"],
  files: ["dokuwiki", "php-geshi", "libphp-simplepie", "php-phpseclib", "php-random-compat"],
};
export const made = "dokuwiki";

const settings = (folder) => `<?php
$conf['title'] = 'The shore log'; $conf['savedir'] = '${folder}/data'; $conf['useacl'] = 0; $conf['updatecheck'] = 0;
$conf['rss_content'] = 'html'; $conf['basedir'] = '/';
`;

async function startWiki(t) {
  t.copy(unpacked("usr", "share", "dokuwiki"), "wiki");
  for (const name of ["plugins", "tpl"]) t.copy(unpacked("var", "lib", "dokuwiki", "lib", name), `wiki/lib/${name}`);
  t.copy(unpacked("etc", "dokuwiki"), "wiki/conf");
  t.copy(unpacked("var", "lib", "dokuwiki", "data"), "wiki/data");
  // Debian keeps settings apart from the programs; here they lie where the wiki's makers have them.
  t.write("wiki/inc/preload.php", "<?php define('DOKU_CONF', __DIR__ . '/../conf/');\n");
  t.write("wiki/conf/local.php", settings(t.folder("wiki")));
  // What other packages of Debian bring is looked for where it was unpacked.
  const loader = "wiki/vendor/composer/autoload_static.php";
  t.write(loader, t.read(loader).replaceAll("'/usr/share/", `'${unpacked("usr", "share")}/`));
  const port = await freePort();
  const origin = `http://127.0.0.1:${port}`;
  const php = unpacked("usr", "share", "php");
  const server = t.start("php", ["-d", `include_path=.:${php}`, "-S", `127.0.0.1:${port}`], {
    cwd: t.folder("wiki"),
    env: { PHP_CLI_SERVER_WORKERS: "4" },
  });
  await until(
    () => fetch(`${origin}/doku.php`).then((answer) => answer.ok),
    () => `the wiki: ${server.said()}`,
    30_000,
  );
  return origin;
}

/** Writes a page as somebody does who pastes a text into the editor and saves. */
async function write(page, origin, text) {
  await page.goto(`${origin}/doku.php?id=limpet&do=edit`);
  await page.waitForSelector("#wiki__text");
  await page.$eval("#wiki__text", (field) => (field.value = ""));
  await page.focus("#wiki__text");
  await page.keyboard.sendCharacter(text);
  await page.click("#edbtn__preview");
  await page.waitForSelector(".preview");
  const preview = await page.$eval(".preview", (one) => one.innerHTML);
  await Promise.all([page.waitForNavigation(), page.click("#edbtn__save")]);
  return preview;
}

export async function run(t, { post: written }) {
  const origin = await startWiki(t);
  const address = `${origin}/doku.php?id=limpet`;
  const { page } = await t.window({ scripts: false });
  t.step("Copy what the notebook hands out for DokuWiki: text, every figure as it reads today.");
  t.step("Open the page’s editor, paste, and save.");
  const preview = await write(page, origin, written("text"));
  searchReads(t, wordsOf(preview), { place: "preview" });
  await readsStill(t, address, { inside: "#dokuwiki__content .page" });

  const more = ["A later remark."];
  for (let n = 0; n < 10; n++) await write(page, origin, written("text", [n === 9 ? more[0] : `Remark ${n}.`]));
  await readsStill(t, address, { inside: "#dokuwiki__content .page", more, place: "page, edited and saved ten times" });

  const feed = await (await fetch(`${origin}/feed.php?mode=list&ns=`)).text();
  assert.match(feed, /every 44\.30 turns/);
  t.found("feed", "text");
  await fetch(`${origin}/lib/exe/taskrunner.php?id=limpet`);
  await page.goto(`${origin}/doku.php?do=search&q=turns`);
  assert.match(await page.$eval("#dokuwiki__content", (one) => one.textContent), /limpet/i);
  t.found("search", "finds the page");

  // Why text is handed out: tags are shown as they are written.
  await write(page, origin, written("html"));
  assert.match(
    await page.$eval("#dokuwiki__content .page", (one) => one.innerText),
    /<mw-value of=.front.>44\.30<\/mw-value>/,
  );
  t.found("tags", "are shown as they are written: hand out text");
}
