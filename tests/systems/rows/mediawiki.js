// MediaWiki: a page written in its editor, by anybody. It takes no tags.
import assert from "node:assert/strict";
import { unpacked } from "../lib/bring.js";
import { readsStill, searchReads, wordsOf } from "../lib/reading.js";
import { freePort, until } from "../lib/run.js";

export const needs = {
  programs: ["php-cli", "php-xml", "php-mbstring", "php-intl", "php-sqlite3"],
  files: ["mediawiki", "mediawiki-classes"],
};
export const made = "mediawiki";

async function startWiki(t) {
  t.copy(unpacked("usr", "share", "mediawiki"), "wiki");
  const port = await freePort();
  const origin = `http://127.0.0.1:${port}`;
  const parameters = [
    ...[
      "maintenance/install.php",
      "--dbtype=sqlite",
      `--dbpath=${t.folder("data")}`,
      "--dbname=log",
      "--scriptpath=",
      `--server=${origin}`,
    ],
    ...["--lang=en", "--skins=Vector", "--pass=a-shore-of-waders-2026", "The shore log", "Keeper"],
  ];
  await t.run("php", parameters, { cwd: t.folder("wiki") });
  // Ten saves come quicker here than from people, whom a wiki lets save eight times a minute.
  t.write("wiki/LocalSettings.php", `${t.read("wiki/LocalSettings.php")}\n$wgRateLimits = [];\n`);
  const server = t.start("php", ["-S", `127.0.0.1:${port}`], {
    cwd: t.folder("wiki"),
    env: { PHP_CLI_SERVER_WORKERS: "4" },
  });
  await until(
    () => fetch(`${origin}/index.php?title=Main_Page`).then((answer) => answer.ok),
    () => `the wiki: ${server.said()}`,
    60_000,
  );
  return origin;
}

const inside = "#mw-content-text";

async function write(page, origin, text) {
  await page.goto(`${origin}/index.php?title=Limpet&action=edit`);
  await page.waitForSelector("#wpTextbox1");
  await page.$eval("#wpTextbox1", (field) => (field.value = ""));
  await page.focus("#wpTextbox1");
  await page.keyboard.sendCharacter(text);
  await Promise.all([page.waitForNavigation(), page.click("#wpPreview")]);
  const preview = await page.$eval("#wikiPreview", (one) => one.innerHTML);
  await Promise.all([page.waitForNavigation(), page.click("#wpSave")]);
  return preview;
}

export async function run(t, { post: written }) {
  const origin = await startWiki(t);
  const address = `${origin}/index.php?title=Limpet`;
  const { page } = await t.window({ scripts: false });
  t.step("Copy what the notebook hands out for MediaWiki: text, every figure as it reads today.");
  t.step("Open the page’s editor, paste, and save.");
  const preview = await write(page, origin, written("text"));
  searchReads(t, wordsOf(preview), { place: "preview" });
  await readsStill(t, address, { inside });

  const more = ["A later remark."];
  for (let n = 0; n < 10; n++) await write(page, origin, written("text", [n === 9 ? more[0] : `Remark ${n}.`]));
  await readsStill(t, address, { inside, more, place: "page, edited and saved ten times" });

  await t.run("php", ["maintenance/runJobs.php"], { cwd: t.folder("wiki") });
  const found = await (await fetch(`${origin}/index.php?title=Special:Search&search=44.30&fulltext=1`)).text();
  assert.match(wordsOf(found), /Limpet/);
  t.found("search", "finds the page by a figure in it");
  // Feeds of a wiki hold what changed; what other programs read is its interface.
  const api = await (
    await fetch(`${origin}/api.php?action=parse&page=Limpet&prop=text&format=json&formatversion=2`)
  ).json();
  searchReads(t, wordsOf(api.parse.text), { place: "interface for programs" });

  await write(page, origin, written("html"));
  assert.match(await page.$eval(inside, (one) => one.innerText), /<mw-value of=.front.>44\.30<\/mw-value>/);
  t.found("tags", "are shown as they are written: hand out text");
}
