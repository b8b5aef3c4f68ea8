import { mkdtempSync, rmSync } from "node:fs";
import type { AddressInfo } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import puppeteer, { type Browser } from "puppeteer-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { findBrowsers } from "../../scripts/lib/browsers.js";
import { browserFor } from "../demo/browser.js";
import { demoServer, Hands, pressOn } from "./page.js";

// What is kept survives what browsers do: a reload, a page left at once, a process that is killed, a full device.

const folder = mkdtempSync(join(tmpdir(), "notebook-"));
const server = demoServer();
let browser: Browser;
let address: string;
let close: () => Promise<void>;

const launch = (): Promise<Browser> =>
  puppeteer.launch({
    executablePath: findBrowsers().chromium,
    userDataDir: folder,
    args: ["--no-sandbox", "--disable-gpu", "--disable-quic", "--disable-background-networking", "--no-first-run"],
  });

async function begun(hands: Hands, driver: string): Promise<void> {
  await hands.fill("Teeth of the gear that drives", driver);
  await hands.fill("Teeth of the gear that is driven", "60");
  await hands.press("Then the wheels");
  await hands.until(/To buy/);
}

const fresh = (): string => `${address}notebook/?new`;
const titled = async (hands: Hands, title: string): Promise<void> => {
  const field = await hands.find("textbox", "Name of this notebook");
  await pressOn(field, 3);
  await hands.page.keyboard.type(title);
  await hands.page.keyboard.press("Tab");
};
const titleOf = async (hands: Hands): Promise<string> =>
  (await hands.find("textbox", "Name of this notebook")).evaluate((one) => (one as HTMLInputElement).value);

/** Waits until the database holds a title. */
const kept = (hands: Hands, title: string): Promise<unknown> =>
  hands.page.waitForFunction(
    async (wanted) => {
      const database = await new Promise<IDBDatabase>((done) => {
        const request = indexedDB.open("meshwright notebooks /notebook/");
        request.onsuccess = () => done(request.result);
      });
      const all = await new Promise<{ notebook: { title: string } }[]>((done) => {
        const request = database.transaction("notebooks").objectStore("notebooks").getAll();
        request.onsuccess = () => done(request.result as never);
      });
      database.close();
      return all.some(({ notebook }) => notebook.title === wanted);
    },
    { polling: 50 },
    title,
  );

describe("what is kept", () => {
  beforeAll(async () => {
    const opened = await browserFor(server);
    ({ address } = opened);
    await opened.browser.close();
    browser = await launch();
    close = async () => {
      await browser.close();
      server.close();
      server.closeAllConnections();
    };
    expect((server.address() as AddressInfo).port).toBeGreaterThan(0);
  });
  afterAll(async () => {
    await close();
    rmSync(folder, { recursive: true, force: true });
  });

  it("survives a page that is left at once, before anything was written by itself", async () => {
    const hands = await Hands.open(browser, fresh());
    await begun(hands, "15");
    await kept(hands, "A new drivetrain");
    await titled(hands, "left at once");
    const here = hands.page.url();
    await hands.page.goto("about:blank");
    await hands.page.goto(here);
    await hands.until(/To buy/);
    expect(await titleOf(hands)).toBe("left at once");
  });

  it("survives a browser that is killed, and comes back by itself", async () => {
    const hands = await Hands.open(browser, fresh());
    await begun(hands, "17");
    await titled(hands, "before the kill");
    await kept(hands, "before the kill");
    const here = hands.page.url();
    const gone = new Promise((done) => browser.process()!.once("exit", done));
    browser.process()!.kill("SIGKILL");
    await gone;
    browser = await launch();
    const again = await Hands.open(browser, here);
    await again.until(/To buy/);
    expect(await titleOf(again)).toBe("before the kill");
    expect(await again.text()).toContain("3.53");
  });

  it("is one tab's to edit: the other follows, and takes over when it is asked to", async () => {
    const first = await Hands.open(browser, fresh());
    await begun(first, "20");
    await kept(first, "A new drivetrain");
    const second = await Hands.open(browser, first.page.url());
    await second.until(/Being edited in another tab\./);
    await first.page.bringToFront();
    await titled(first, "seen by the other");
    await second.page.bringToFront();
    await second.page.waitForFunction(
      () =>
        document.querySelector("mw-notebook")!.shadowRoot!.querySelector<HTMLInputElement>("h1 input")!.value ===
        "seen by the other",
    );
    await second.press("Edit here instead");
    await second.until(/Saved in this browser only/);
    // Whoever follows edits nothing: not by a press, not by a key, not by typing over the name.
    await first.page.bringToFront();
    expect(await first.until(/Being edited in another tab\./)).not.toMatch(/Undo:/);
    await titled(first, "written by one who follows");
    await first.page.keyboard.down("Control");
    await first.page.keyboard.press("z");
    await first.page.keyboard.up("Control");
    expect(await titleOf(first)).toBe("seen by the other");
    await second.page.bringToFront();
    await titled(second, "from the second");
    await kept(second, "from the second");
    await first.page.bringToFront();
    await first.until(/Being edited in another tab\./);
    expect(await titleOf(first)).toBe("from the second");
    await first.page.close();
    await second.page.close();
  });

  it("says since when a full device has taken nothing, and that it is still in this tab", async () => {
    const hands = await Hands.open(browser, fresh());
    await begun(hands, "21");
    await kept(hands, "A new drivetrain");
    // Chromium's own quota lets small writes pass; what it throws when it does not is thrown here.
    await hands.page.evaluate(() => {
      const { put } = IDBObjectStore.prototype;
      IDBObjectStore.prototype.put = () => {
        throw new DOMException("full", "QuotaExceededError");
      };
      Object.assign(globalThis, { makeRoom: () => void (IDBObjectStore.prototype.put = put) });
    });
    await titled(hands, "no room");
    await hands.until(/Not saved since \d\d:\d\d: this device is full\. It is still in this tab\./);
    await hands.page.evaluate(() => (globalThis as unknown as { makeRoom(): void }).makeRoom());
    await hands.press("Try again");
    await hands.until(/Saved in this browser only/);
  });

  it("shows each tab its own notebook after a reload, and lists both", async () => {
    const first = await Hands.open(browser, fresh());
    await begun(first, "18");
    await titled(first, "Turnstone");
    await kept(first, "Turnstone");
    const second = await Hands.open(browser, fresh());
    await begun(second, "19");
    await titled(second, "Redshank");
    await kept(second, "Redshank");
    await first.page.bringToFront();
    await first.page.reload();
    await first.until(/To buy/);
    expect(await titleOf(first)).toBe("Turnstone");
    await first.press("Notebooks");
    expect(await first.until(/Notebooks in this browser/)).toContain("Redshank");
  });
});
