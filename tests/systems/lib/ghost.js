// A Ghost with a database of its own, and its editor.
import assert from "node:assert/strict";
import { cpSync } from "node:fs";
import { ghostFolder, ghostNode } from "./bring.js";
import { startDatabase } from "./database.js";
import { freePort, until } from "./run.js";

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
  await page.waitForSelector('a[href*="#/posts"]', { visible: true });
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
const text = ".koenig-react-editor [contenteditable]";
const button = (name) => `[data-test-button="${name}"]`;
const idIn = (page) => /editor\/post\/([0-9a-f]{24})/.exec(page.url())?.[1];

/** Presses what an author sees and can press: nothing lies over it, it is not grey, and it has come to rest. */
async function press(page, selector) {
  const ready = async (wanted) => {
    const middleOf = (one) => {
      const { x, y, width, height } = one.getBoundingClientRect();
      return [Math.round(x + width / 2), Math.round(y + height / 2)];
    };
    const seen = [...document.querySelectorAll(wanted)].filter((one) => one.checkVisibility() && !one.disabled);
    seen[0]?.scrollIntoView({ block: "nearest" });
    const one = seen.find((each) => each.contains(document.elementFromPoint(...middleOf(each))));
    if (!one) return undefined;
    const before = middleOf(one);
    await new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve)));
    return `${before}` === `${middleOf(one)}` ? before : undefined;
  };
  await page.mouse.click(...(await until(() => page.evaluate(ready, selector), `${selector} can be pressed`)));
}

/** Opens the editor anew: what is told after publishing would lie over it. */
async function open(page, { origin }, id = "") {
  await page.goto("about:blank");
  await page.goto(`${origin}/ghost/#/editor/post/${id}`);
  await page.waitForSelector(title);
  await page.waitForSelector(id ? '[data-kg-card="html"]' : text);
}

/** The editor says of a draft that it is saved, and is at rest. */
const restsAsDraft = (page) =>
  until(
    () =>
      page.evaluate(() => /^Draft/.test(document.querySelector("[data-test-editor-post-status]").textContent.trim())),
    "the editor says that the draft is saved",
  );

/** Writes a post whose one card is of HTML; resolves to its number. It is a draft. */
export async function write(page, site, name, html) {
  await open(page, site);
  await page.type(title, name);
  await page.keyboard.press("Enter");
  // Leaving the title saves the post for the first time, and gives it a number.
  const id = await until(() => idIn(page), "the draft is begun");
  await restsAsDraft(page);
  await until(() => page.evaluate((where) => document.activeElement?.matches(where), text), "the caret is in the post");
  await page.keyboard.type("/html");
  await page.waitForSelector('[data-kg-card-menu-item="HTML"][data-kg-cardmenu-selected="true"]', { visible: true });
  await page.keyboard.press("Enter");
  await until(() => page.evaluate(() => !!document.activeElement?.closest(".cm-content")), "the caret in the card");
  await page.keyboard.sendCharacter(html);
  await press(page, title);
  // It saves by itself when the hands have rested, and hands out its own addresses whole.
  await until(
    async () => (await kept(page, site, id)).html?.replaceAll(site.origin, "").includes(html.trim()),
    "the draft is kept, whole",
  );
  await restsAsDraft(page);
  return id;
}

/** Opens a draft that is kept, and publishes it. */
export async function publish(page, site, id) {
  await open(page, site, id);
  for (const name of ["publish-flow", "continue", "confirm-publish"]) await press(page, button(name));
  await page.waitForSelector('[data-test-publish-flow="complete"]', { visible: true });
}

/** Opens a published post again, writes a paragraph below what is there, and saves it with other words so many times. */
export async function edit(page, site, id, words, times) {
  await open(page, site, id);
  for (let n = 0; n < times; n++) {
    const said = n === times - 1 ? words : `${words} ${n}`;
    // Whoever has pressed a button has left the text.
    await press(page, `${text} > p:last-child`);
    await until(
      () => page.evaluate((where) => document.activeElement?.matches(where), text),
      "the caret below the card",
    );
    await page.keyboard.press("End");
    // What was written another day stays: this is a paragraph of its own.
    if (n === 0) await page.keyboard.press("Enter");
    await page.keyboard.down("Shift");
    await page.keyboard.press("Home");
    await page.keyboard.up("Shift");
    await page.keyboard.type(said);
    await press(page, button("publish-save"));
    await until(async () => (await kept(page, site, id)).plaintext.trimEnd().endsWith(said), `“${said}” is kept`);
    await until(
      () =>
        page.evaluate(
          (save) => [...document.querySelectorAll(save)].every((one) => one.disabled),
          button("publish-save"),
        ),
      "the editor has nothing more to save",
    );
  }
}
