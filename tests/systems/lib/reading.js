// How a post is read: by a visitor with scripts and without, in a feed, in an excerpt.
import assert from "node:assert/strict";
import { JSDOM } from "jsdom";
import { sentences } from "./post.js";
import { freePort, until } from "./run.js";

const times = (text, part) => text.split(part).length - 1;
const flat = (text) => text.replace(/\s+/g, " ").trim();

/** What stands in no text that a reader sees. */
const traces = /<\/?mw-|\bmw-[a-z]|\{\{|\{%|"format"|stages=|HAHAHUGO/;

function clean(text, what, more = []) {
  for (const sentence of [...Object.values(sentences), ...more])
    assert.equal(times(text, sentence), 1, `${what}: “${sentence}” stands there once\n${text.slice(0, 3000)}`);
  assert.doesNotMatch(text, traces, what);
}

/** Whether a line of the console is the site's: there is no network, so that what a theme brings from elsewhere is not there. */
function isOurs(line, origin) {
  if (/favicon\.ico|ERR_INTERNET_DISCONNECTED|ERR_NAME_NOT_RESOLVED/.test(line)) return false;
  const addresses = line.match(/https?:\/\/[^\s"']+/g) ?? [];
  return addresses.length === 0 || addresses.some((address) => address.startsWith(origin));
}

/** The guide shows what a visitor sees where everything is at hand. */
const pictured = (t, page, place) =>
  /no plugin|nothing installed|without/.test(place) ? undefined : t.picture(page, "page");

const isAlive = (page, { place, wrong }) =>
  until(
    () => page.evaluate(() => alive()),
    () => `${place}: living figures at ${page.url()}: ${wrong.join("\n")}`,
    15_000,
  );

/** What stands in a window where the figures live: right before and after a change, nothing in the console, the build there once. */
async function livesIn(page, { wrong, more, place, inside }) {
  await page.evaluate(() => settled());
  const seen = await page.evaluate(async (where) => {
    const before = reads(where);
    const builds = document.querySelectorAll("mw-build").length;
    const told = [...document.querySelectorAll("mw-build")].flatMap((_, n) => findings(n));
    step(1);
    await settled();
    return { before, builds, told, after: [count(), shown(0), shown(1)], wrong, warned };
  }, inside);
  clean(flat(seen.before), place, more);
  assert.deepEqual({ told: seen.told, builds: seen.builds }, { told: [], builds: 1 }, place);
  assert.deepEqual(seen.after, ["16", "41.53", "40.62"], `${place}: every figure follows a change of the count`);
  const drawn = await page.evaluate(() =>
    [...document.querySelectorAll("mw-ratio-summary, mw-overdrive-gauge")].map(
      (one) => !!one.shadowRoot?.textContent.trim(),
    ),
  );
  assert.deepEqual(drawn, [true, true], `${place}: tables are drawn`);
  const whole = [...wrong, ...seen.wrong].filter((line) => isOurs(line, new URL(page.url()).origin));
  assert.deepEqual(whole, [], `${place}: the console stays empty`);
  const html = await page.content();
  assert.equal(times(html, "meshwright.js"), 1, `${place}: the script is named once`);
}

/** A visitor reads the post, with scripts and without. */
export async function readsAlive(t, url, { more = [], place = "page", inside = "body" } = {}) {
  const { page, wrong } = await t.window({ own: true });
  try {
    const answer = await page.goto(url, { waitUntil: "load" });
    assert.equal(answer.status(), 200, url);
    await isAlive(page, { place, wrong });
    await page.evaluate(() => settled());
    await pictured(t, page, place);
    await livesIn(page, { wrong, more, place, inside });
  } catch (error) {
    await t.keep(page);
    throw error;
  } finally {
    await page.close();
  }
  await readsStill(t, url, { more, place: `${place} without scripts`, inside, silent: true });
  t.found(place, "alive");
}

/** The sockets of a page as it stands at whose other end somebody has spoken. */
async function socketsOf(page) {
  const open = new Set();
  const client = await page.createCDPSession();
  await client.send("Network.enable");
  client.on("Network.webSocketFrameReceived", ({ requestId }) => open.add(requestId));
  client.on("Network.webSocketClosed", ({ requestId }) => open.delete(requestId));
  page.on("framenavigated", (frame) => frame === page.mainFrame() && open.clear());
  return open;
}

/**
 * An author writes beside the generator's own server, which makes the site anew at every save: ten saves, with the page open all
 * the while. `save` writes the post with what came later; `reloads`: the window shows a save by itself, since it is `told` of it by
 * a socket or `asks`; else the author loads it anew.
 */
export async function previewReads(t, { start, cwd, env, path, inside, save, reloads }) {
  const place = "preview, saved ten times";
  const port = await freePort();
  const url = `http://127.0.0.1:${port}${path}`;
  save([]);
  const [command, ...words] = start(port);
  const server = t.start(command, words, { cwd, env });
  await until(
    () => fetch(url).then((answer) => answer.ok),
    () => `${place}: ${server.said()}`,
    60_000,
  );
  const { page, wrong } = await t.window({ own: true });
  try {
    // Servers date what they serve by the second; here two saves fall into one, as by hand they do not.
    await page.setCacheEnabled(false);
    const sockets = await socketsOf(page);
    await page.goto(url, { waitUntil: "load" });
    await isAlive(page, { place, wrong });
    for (let n = 1; n <= 10; n++) {
      const words = n === 10 ? "A later remark." : `Remark ${n}.`;
      if (reloads === "told") await until(() => sockets.size > 0, `${place}: the window listens`);
      save([words]);
      const served = async () => (await (await fetch(url)).text()).includes(words);
      await until(served, () => `${place}: “${words}” is served: ${server.said()}`, 60_000);
      if (!reloads) await page.reload({ waitUntil: "load" });
      const shows = () => page.evaluate((text) => document.body.textContent.includes(text), words);
      await until(shows, `${place}: the window shows “${words}”`);
    }
    await isAlive(page, { place, wrong });
    // What was under way when the page was loaded anew is cut off.
    const said = wrong.filter((line) => !/ERR_ABORTED/.test(line));
    await livesIn(page, { wrong: said, more: ["A later remark."], place, inside });
  } catch (error) {
    await t.keep(page);
    throw error;
  } finally {
    await page.close();
    await server.stop();
  }
  t.found(place, "alive");
}

/** A visitor without scripts reads the post as it was written. */
export async function readsStill(t, url, { more = [], place = "page", inside = "body", silent = false } = {}) {
  const { page } = await t.window({ own: true, scripts: false });
  try {
    await page.goto(url, { waitUntil: "load" });
    const { document } = new JSDOM(await page.content()).window;
    for (const one of document.querySelectorAll("script, style, title, template")) one.remove();
    const text = flat(document.querySelector(inside).textContent);
    clean(text, place, more);
    if (!silent) await pictured(t, page, place);
  } finally {
    await page.close();
  }
  if (!silent) t.found(place, "text");
}

/** What is saved of a post of ours: elements, with their attributes. */
export const elementsOf = (html) =>
  (html.match(/<mw-[a-z-]+[^>]*>/g) ?? [])
    .map((tag) => [/[a-z-]+/.exec(tag)[0], ...(tag.match(/ [a-z-]+="[^"]*"/g) ?? []).sort()].join(""))
    .sort();

/** The words of a piece of HTML. */
export const wordsOf = (html) => flat(JSDOM.fragment(html).textContent);

/** The entries of a feed, as a reader of feeds shows them: HTML without scripts and without our elements. */
export async function feedReads(t, url, { place = "feed", whole = true } = {}) {
  const text = await (await fetch(url)).text();
  const { document } = new JSDOM(text, { contentType: "text/xml" }).window;
  const entries = [...document.querySelectorAll("item, entry")];
  assert.ok(entries.length > 0, `${place}: an entry in ${text.slice(0, 500)}`);
  for (const entry of entries) {
    const fields = [...entry.children].filter(({ localName }) =>
      /^(description|summary|content|encoded)$/.test(localName),
    );
    assert.ok(fields.length > 0, `${place}: a text in ${entry.outerHTML.slice(0, 500)}`);
    const texts = fields.map((one) => wordsOf(one.textContent || one.innerHTML));
    assert.ok(
      texts.some((one) => one.includes(sentences.first)),
      `${place}: ${texts.join(" | ").slice(0, 2000)}`,
    );
    if (whole)
      assert.ok(
        texts.some((one) => one.includes(sentences.second)),
        `${place}: ${texts.join(" | ").slice(0, 2000)}`,
      );
    for (const one of texts) assert.doesNotMatch(one, traces, place);
  }
  t.found(place, "text");
}

/** A piece of HTML that stands for the post in a list: its first sentence, right, and no markup. */
export function excerptReads(t, html, { place = "excerpt" } = {}) {
  const text = wordsOf(html);
  assert.ok(text.includes(sentences.first.slice(0, 60)), `${place}: ${text.slice(0, 1500)}`);
  assert.doesNotMatch(text, traces, place);
  t.found(place, "text");
}

/** What a search looks through. */
export function searchReads(t, text, { place = "search" } = {}) {
  const words = flat(text);
  assert.ok(words.includes("every 44.30 turns"), `${place}: ${words.slice(0, 1500)}`);
  assert.doesNotMatch(words, traces, place);
  t.found(place, "text");
}
