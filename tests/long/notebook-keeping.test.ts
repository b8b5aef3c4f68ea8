import { mkdtempSync, rmSync } from "node:fs";
import type { AddressInfo } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import puppeteer, { type Browser, type KeyInput, type Page } from "puppeteer-core";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { findBrowsers } from "../../scripts/lib/browsers.js";
import { EngineHands } from "../notebook/engine-hands.js";
import { demoServer } from "../notebook/page.js";

// What browsers do to what people keep, done to it in Chromium and Firefox: tabs that are left, closed last, opened third and killed, a
// device that is full, a button pressed in the middle of typing, a site that is emptied.

const server = demoServer();
let address: string;

beforeAll(async () => {
  await new Promise<void>((done) => server.listen(0, "127.0.0.1", done));
  address = `http://127.0.0.1:${(server.address() as AddressInfo).port}/`;
});
afterAll(() => {
  server.close();
  server.closeAllConnections();
});

const later = (milliseconds: number): Promise<void> => new Promise((done) => setTimeout(done, milliseconds));

interface Tab extends EngineHands {
  readonly tab: Page;
}

async function open(browser: Browser, url: string): Promise<Tab> {
  const tab = await browser.newPage();
  await tab.setViewport({ width: 1280, height: 900 });
  await tab.goto(url);
  const hands = new EngineHands({
    run: (action, ...values) => tab.evaluate(action as never, ...(values as never[])) as never,
    press: (key) => tab.keyboard.press(key as KeyInput),
    type: (text) => tab.keyboard.type(text),
    click: (x, y) => tab.mouse.click(x, y),
    go: async (to) => void (await tab.goto(to)),
    url: () => tab.url(),
  });
  return Object.assign(hands, { tab });
}

const titleIn = (hands: Tab): Promise<string> =>
  hands.tab.evaluate(
    () => document.querySelector("mw-notebook")?.shadowRoot?.querySelector<HTMLInputElement>("h1 input")?.value ?? "",
  );

async function shows(hands: Tab, title: string): Promise<void> {
  for (let n = 0; n < 300; n++) {
    if ((await titleIn(hands).catch(() => "")) === title) return;
    await later(50);
  }
  expect(await titleIn(hands)).toBe(title);
}

async function called(hands: Tab, title: string): Promise<void> {
  await hands.tab.bringToFront();
  await hands.fill("Name of this notebook", title);
}

/** A notebook with one pair in it, that is kept. */
async function begun(browser: Browser, driver: string, title: string): Promise<Tab> {
  const hands = await open(browser, `${address}notebook/?new`);
  await hands.fill("Teeth of the gear that drives", driver);
  await hands.fill("Teeth of the gear that is driven", "60");
  await hands.press("Then the wheels");
  await hands.until(/To buy/);
  await called(hands, title);
  await later(700);
  return hands;
}

describe.each(["chromium", "firefox"] as const)("in %s", (name) => {
  let folder: string;
  let browser: Browser;
  const launch = (): Promise<Browser> =>
    puppeteer.launch({
      browser: name === "firefox" ? "firefox" : "chrome",
      executablePath: findBrowsers()[name],
      userDataDir: folder,
      args: name === "firefox" ? [] : ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run"],
    });
  beforeEach(async () => {
    folder = mkdtempSync(join(tmpdir(), "notebook-kept-"));
    browser = await launch();
  });
  afterEach(async () => {
    await browser.close().catch(() => undefined);
    rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
  });

  it("a page that is left at once loses nothing", async () => {
    const hands = await begun(browser, "15", "before");
    const here = hands.tab.url();
    await called(hands, "left at once");
    await hands.tab.goto(`${address}limpet.svg`);
    await hands.tab.goto(here);
    await shows(hands, "left at once");
  });

  it("a browser that is killed has what is older than a moment", async () => {
    const hands = await begun(browser, "16", "before the kill");
    const here = hands.tab.url();
    const gone = new Promise((done) => browser.process()!.once("exit", done));
    browser.process()!.kill("SIGKILL");
    await gone;
    browser = await launch();
    await shows(await open(browser, here), "before the kill");
  });

  it("a tab that follows takes over, the tab closed last overwrites nothing, and a third loses nothing", async () => {
    const first = await begun(browser, "17", "first");
    const here = first.tab.url();
    const second = await open(browser, here);
    await second.until(/Being edited in another tab\./);
    await called(first, "edited in the first");
    await shows(second, "edited in the first");
    await second.tab.bringToFront();
    await second.press("Edit here instead");
    await second.until(/Saved in this browser only/);
    await called(second, "edited in the second");
    await shows(first, "edited in the second");
    const third = await open(browser, here);
    await shows(third, "edited in the second");
    await second.tab.close();
    await first.tab.close();
    await third.tab.reload();
    await shows(third, "edited in the second");
    await third.until(/Saved in this browser only/);
  });

  it("each tab shows its own notebook again", async () => {
    const first = await begun(browser, "18", "Dunlin");
    const second = await begun(browser, "19", "Ruff");
    await first.tab.bringToFront();
    await first.tab.reload();
    await shows(first, "Dunlin");
    await second.tab.bringToFront();
    await second.tab.reload();
    await shows(second, "Ruff");
  });

  it("a full device is told of, and what is in the tab can be saved once there is room", async () => {
    const hands = await begun(browser, "20", "room");
    await hands.tab.evaluate(() => {
      const { put } = IDBObjectStore.prototype;
      IDBObjectStore.prototype.put = () => {
        throw new DOMException("full", "QuotaExceededError");
      };
      Object.assign(globalThis, { makeRoom: () => void (IDBObjectStore.prototype.put = put) });
    });
    await called(hands, "no room");
    await hands.until(/Not saved since \d\d:\d\d: this device is full\. It is still in this tab\./);
    await hands.tab.evaluate(() => (globalThis as unknown as { makeRoom(): void }).makeRoom());
    await hands.press("Try again");
    await hands.until(/Saved in this browser only/);
    await hands.tab.reload();
    await shows(hands, "no room");
  });

  it("a step back in the middle of typing enters nothing, and brings back what was typed", async () => {
    const hands = await begun(browser, "21", "typing");
    await hands.press("Gears: 21 drives 60");
    await hands.reach("textbox", "Module");
    await hands.page.type("0.7");
    await hands.tab.goBack().catch(() => undefined);
    await hands.tab.goForward().catch(() => undefined);
    await hands.until(/Typed and not entered: “0\.7”, Module\.|DP, pressure angle/);
    await shows(hands, "typing");
    expect(await hands.text()).not.toMatch(/Undo: [^.]*module/);
  });

  it("a site that was emptied opens empty, and says what it keeps", async () => {
    const hands = await begun(browser, "22", "emptied");
    await hands.tab.goto(`${address}limpet.svg`);
    await hands.tab.evaluate(async () => {
      localStorage.clear();
      for (const { name: database } of await indexedDB.databases()) indexedDB.deleteDatabase(database!);
    });
    await hands.tab.goto(`${address}notebook/`);
    await hands.until(/What does the motor turn first\?/);
    await hands.until(/Nothing to save yet/);
  });
});
