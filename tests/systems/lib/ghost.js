// A Ghost with a database of its own, and its editor.
import assert from "node:assert/strict";
import { cpSync } from "node:fs";
import { ghostFolder, ghostNode } from "./bring.js";
import { startDatabase } from "./database.js";
import { delay, freePort, until } from "./run.js";

const somebody = { name: "Author", email: "author@example.com", password: "a-shore-of-waders-2026" };

/** Settings as names that hold the way to them. */
const flat = (settings, before = "") =>
  Object.assign(
    {},
    ...Object.entries(settings).map(([name, value]) =>
      typeof value === "object" && !Array.isArray(value)
        ? flat(value, `${before}${name}__`)
        : { [`${before}${name}`]: typeof value === "object" ? JSON.stringify(value) : String(value) },
    ),
  );

/** An empty site with one person, who owns it. */
export async function startGhost(t) {
  const socketPath = await startDatabase(t);
  const port = await freePort();
  const origin = `http://127.0.0.1:${port}`;
  cpSync(ghostFolder("content"), t.folder("content"), { recursive: true });
  const settings = {
    url: origin,
    server: { host: "127.0.0.1", port },
    database: { client: "mysql", connection: { socketPath, user: "log", password: "log", database: "log" } },
    mail: { transport: "Direct" },
    paths: { contentPath: t.folder("content") },
    logging: { transports: ["stdout"] },
    security: { staffDeviceVerification: false },
    privacy: { useUpdateCheck: false, useGravatar: false, useRpcPing: false },
  };
  // It finds itself by the folder that it is started in, and takes settings from its surroundings.
  const server = t.start(ghostNode(), ["index.js"], {
    cwd: ghostFolder(),
    env: { NODE_ENV: "production", ...flat(settings) },
  });
  await until(
    () => fetch(`${origin}/ghost/api/admin/site/`).then((answer) => answer.ok),
    () => `Ghost: ${server.said()}`,
    120_000,
  );
  const answer = await fetch(`${origin}/ghost/api/admin/authentication/setup/`, {
    method: "POST",
    headers: { "content-type": "application/json", origin },
    body: JSON.stringify({ setup: [{ ...somebody, blogTitle: "The shore log" }] }),
  });
  assert.equal(answer.status, 201, await answer.text());
  return { origin };
}

/** The author's window, logged in. */
export async function logIn(t, { origin }) {
  const { page, wrong } = await t.window({ own: true });
  page.on("dialog", (dialog) => void dialog.accept().catch(() => undefined));
  await page.goto(`${origin}/ghost/#/signin`);
  await page.waitForSelector("#identification");
  await page.type("#identification", somebody.email);
  await page.type("#password", somebody.password);
  await page.keyboard.press("Enter");
  await until(() => !page.url().includes("signin"), "the author is let in");
  // A new site begins with a post of its own: this author's log does not.
  await page.evaluate(async (posts) => {
    const kept = await (await fetch(`${posts}?limit=all`)).json();
    for (const { id } of kept.posts) await fetch(`${posts}${id}/`, { method: "DELETE" });
  }, `${origin}/ghost/api/admin/posts/`);
  return { page, wrong };
}

/** What is kept of a post, as the interface for programs has it. */
export const kept = (page, { origin }, id) =>
  page.evaluate(
    async (url) => (await (await fetch(url)).json()).posts[0],
    `${origin}/ghost/api/admin/posts/${id}/?formats=html,plaintext`,
  );

const title = "[data-test-editor-title-input]";
const idIn = (page) => /editor\/post\/([0-9a-f]{24})/.exec(page.url())?.[1];

/** Writes a post whose one card is of HTML; resolves to its number. It is a draft. */
export async function write(page, { origin }, name, html) {
  // What is told after publishing would lie over the editor.
  await page.goto("about:blank");
  await page.goto(`${origin}/ghost/#/editor/post`);
  await page.waitForSelector(title);
  await page.waitForSelector(".koenig-react-editor [contenteditable]");
  await page.type(title, name);
  await page.keyboard.press("Enter");
  await until(() => page.evaluate(() => document.activeElement?.isContentEditable), "the caret in the post");
  await page.keyboard.type("/html");
  // The menu narrows down letter by letter: not before it is at what was typed.
  await until(
    () =>
      page.evaluate(() =>
        /^html/i.test(document.querySelector('[data-kg-cardmenu-selected="true"]')?.textContent.trim()),
      ),
    "the card of HTML in the menu",
  );
  await page.keyboard.press("Enter");
  await page.waitForSelector('[data-kg-card="html"] .cm-content');
  await until(() => page.evaluate(() => !!document.activeElement?.closest(".cm-content")), "the caret in the card");
  await page.keyboard.sendCharacter(html);
  await page.click(title);
  const id = await until(() => idIn(page), "the draft is begun");
  // The first save was begun when the title was left; what came since is saved by hand.
  await until(async () => !!(await kept(page, { origin }, id)), "the first save");
  await delay(1000);
  await page.keyboard.down("Control");
  await page.keyboard.press("s");
  await page.keyboard.up("Control");
  await until(
    async () => (await kept(page, { origin }, id)).html?.includes("</mw-overdrive-gauge>"),
    "the draft is saved",
  );
  return id;
}

/** Opens a draft that is kept, and publishes it: while the editor saves by itself, it takes no press of the button. */
export async function publish(page, { origin }, id) {
  await page.goto("about:blank");
  await page.goto(`${origin}/ghost/#/editor/post/${id}`);
  await page.waitForSelector('[data-kg-card="html"]');
  await delay(500);
  await page.click('[data-test-button="publish-flow"]');
  for (const button of ["continue", "confirm-publish"]) {
    await page.waitForSelector(`[data-test-button="${button}"]`, { visible: true });
    await delay(500);
    await page.click(`[data-test-button="${button}"]`);
  }
  await page.waitForSelector('[data-test-publish-flow="complete"]', { visible: true });
}

/** Opens a published post again, writes a paragraph below what is there, and saves it with other words so many times. */
export async function edit(page, site, id, words, times) {
  await page.goto("about:blank");
  await page.goto(`${site.origin}/ghost/#/editor/post/${id}`);
  await page.waitForSelector('[data-kg-card="html"]');
  await delay(500);
  for (let n = 0; n < times; n++) {
    const said = n === times - 1 ? words : `${words} ${n}`;
    // Whoever has pressed a button has left the text.
    await page.mouse.click(640, 900);
    await until(() => page.evaluate(() => document.activeElement?.isContentEditable), "the caret below the card");
    if (n === 0) {
      // What was written another day stays: this is a paragraph of its own.
      await page.keyboard.press("End");
      await page.keyboard.press("Enter");
    }
    await page.keyboard.down("Shift");
    await page.keyboard.press("Home");
    await page.keyboard.up("Shift");
    await page.keyboard.type(said);
    await page.click('[data-test-button="publish-save"]');
    await until(async () => (await kept(page, site, id)).plaintext.trimEnd().endsWith(said), `“${said}” is kept`);
  }
}
