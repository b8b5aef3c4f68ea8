import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import type { Server } from "node:http";
import type { AddressInfo } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser } from "puppeteer-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { staticServer } from "../../scripts/lib/server.js";
import { browserFor, folder } from "../demo/browser.js";
import { Hands } from "./page.js";

// Without a line the page opens as it was kept, whole; with one, what lies on the site counts, and is kept from then on.

const site = mkdtempSync(join(tmpdir(), "notebook-site-"));
let server: Server;
let browser: Browser;
let address: string;
let close: () => Promise<void>;
let port: number;

const serve = (): Server =>
  staticServer(
    { "/": site, "/notebook/": join(site, "notebook") },
    { headers: { "content-security-policy": "default-src 'self'" } },
  );
const down = (): Promise<void> =>
  new Promise((done) => {
    server.close(() => done());
    server.closeAllConnections();
  });
const up = (): Promise<void> =>
  new Promise((done) => {
    server = serve();
    server.listen(port, "127.0.0.1", done);
  });

/** Another build of the page: its script says which it is. */
function publish(build: string): void {
  const script = readFileSync(folder("packages/notebook/dist/notebook.js"), "utf8");
  writeFileSync(join(site, "notebook", "script", "notebook.js"), `${script}\nglobalThis.thisBuild = "${build}";\n`);
  const list = readFileSync(folder("packages/notebook/dist/kept.js"), "utf8");
  writeFileSync(join(site, "notebook", "script", "kept.js"), list.replace(/"version": "\w+"/, `"version": "${build}"`));
}

const buildOf = (hands: Hands): Promise<unknown> =>
  hands.page.evaluate(() => (globalThis as unknown as { thisBuild: unknown }).thisBuild);
/** Which builds are kept in the browser. */
const keptIn = (hands: Hands): Promise<readonly string[]> =>
  hands.page.evaluate(async () => (await caches.keys()).map((name) => name.split(" ").at(-1)!));
const whenKept = (hands: Hands, build: string): Promise<unknown> =>
  hands.page.waitForFunction(
    async (wanted) => {
      const names = await caches.keys();
      return !!navigator.serviceWorker.controller && names.length === 1 && names[0]!.endsWith(` ${wanted}`);
    },
    { polling: 50 },
    build,
  );

describe("the notebook without a line", () => {
  beforeAll(async () => {
    const built = await browserFor((server = serve()));
    ({ browser, address } = built);
    ({ close } = built);
    port = (server.address() as AddressInfo).port;
    cpSync(folder("demo/notebook"), join(site, "notebook"), { recursive: true });
    mkdirSync(join(site, "notebook", "script"), { recursive: true });
    cpSync(folder("packages/notebook/dist/embed.js"), join(site, "notebook", "script", "embed.js"));
    cpSync(folder("seeds"), join(site, "seeds"), { recursive: true });
    cpSync(folder("demo/limpet.svg"), join(site, "limpet.svg"));
    publish("first");
  });
  afterAll(async () => {
    await close();
    await down().catch(() => undefined);
    rmSync(site, { recursive: true, force: true });
  });

  it("opens as it was kept, with its notebook and the example; with a line again, the newer build replaces it whole", async () => {
    const hands = await Hands.open(browser, `${address}notebook/?new`);
    await whenKept(hands, "first");
    await hands.fill("Teeth of the gear that drives", "17");
    await hands.fill("Teeth of the gear that is driven", "68");
    await hands.press("Then the wheels");
    await hands.until(/Saved in this browser only/);
    const here = hands.page.url();
    await down();
    await hands.page.goto("about:blank");
    await hands.page.goto(here);
    await hands.until(/4\.00/);
    expect(await buildOf(hands)).toBe("first");
    const example = await Hands.open(browser, `${address}notebook/?open=example`);
    await example.until(/Front 44\.30, rear 43\.32/);
    await example.page.close();

    publish("second");
    await up();
    await hands.page.reload();
    await hands.until(/4\.00/);
    expect(await buildOf(hands)).toBe("second");
    await whenKept(hands, "second");
    await down();
    await hands.page.reload();
    await hands.until(/4\.00/);
    expect(await buildOf(hands)).toBe("second");
    await hands.page.close();
    await up();
  });

  it("keeps the older build where the newer one does not arrive whole", async () => {
    publish("third");
    rmSync(join(site, "notebook", "embed.css"));
    const hands = await Hands.open(browser, `${address}notebook/?new`);
    await hands.until(/What does the motor turn first/);
    await hands.page.evaluate(async () => {
      const registration = (await navigator.serviceWorker.getRegistration())!;
      await registration.update().catch(() => undefined);
      while (registration.installing) await new Promise((done) => setTimeout(done, 20));
    });
    expect((await keptIn(hands)).includes("second")).toBe(true);
    await down();
    await hands.page.reload();
    await hands.until(/What does the motor turn first/);
    expect(await buildOf(hands)).toBe("second");
    await hands.page.close();
    await up();
  });

  it("of an older build leaves what a newer one has kept alone, and says so", async () => {
    const hands = await Hands.open(browser, `${address}limpet.svg`);
    await hands.page.evaluate(
      () =>
        new Promise<void>((done, failed) => {
          const request = indexedDB.open("meshwright notebooks /notebook/", 9);
          request.onupgradeneeded = () => request.result.createObjectStore("of a newer page");
          request.onsuccess = () => {
            request.result.close();
            done();
          };
          request.onerror = () => failed(request.error!);
        }),
    );
    const older = await Hands.open(browser, `${address}notebook/?new`);
    await older.until(/Not saved: a newer copy of this page has kept notebooks here, and this one is older\./);
    await older.fill("Teeth of the gear that drives", "17");
    await older.fill("Teeth of the gear that is driven", "51");
    await older.until(/3\.00 so far/);
    expect(older.said).toEqual([]);
    const version = await older.page.evaluate(
      async () => (await indexedDB.databases()).find(({ name }) => name === "meshwright notebooks /notebook/")?.version,
    );
    expect(version).toBe(9);
  });
});
