import { spawnSync } from "node:child_process";
import type { Server } from "node:http";
import type { AddressInfo } from "node:net";
import { fileURLToPath } from "node:url";
import puppeteer, { type Browser, type Page, type Viewport } from "puppeteer-core";
import { findBrowsers } from "../../scripts/lib/browsers.js";
import { staticServer } from "../../scripts/lib/server.js";

// The article in a real browser, under a policy that lets a page use nothing but its own files.

/** A path of the project. */
export const folder = (path: string): string => fileURLToPath(new URL(`../../${path}`, import.meta.url));

/** A page, and all that it said to the console. */
export interface Opened {
  readonly page: Page;
  readonly said: readonly string[];
}

export interface DemoBrowser {
  open(path: string, viewport: Viewport, dark?: boolean): Promise<Opened>;
  close(): Promise<void>;
}

/** Builds what is stale, lets a server listen, and starts a browser for it. */
export async function browserFor(
  server: Server,
): Promise<{ browser: Browser; address: string; close(): Promise<void> }> {
  // A process of its own: what is built for a test environment is another thing than what is published.
  const { NODE_ENV: _, ...env } = process.env;
  spawnSync(process.execPath, [folder("scripts/build.js"), "--if-stale"], { env, stdio: "inherit" });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  const address = `http://127.0.0.1:${(server.address() as AddressInfo).port}/`;
  const browser = await puppeteer.launch({
    executablePath: findBrowsers().chromium,
    args: ["--no-sandbox", "--disable-gpu", "--disable-quic", "--disable-background-networking", "--no-first-run"],
  });
  return {
    browser,
    address,
    async close() {
      await browser.close();
      server.close();
      server.closeAllConnections();
    },
  };
}

/** The demo, and a browser that opens its pages. */
export async function demoBrowser(): Promise<DemoBrowser> {
  const mounts = {
    "/": folder("demo"),
    "/meshwright/": folder("packages/elements/dist"),
    "/guide/minisearch/": folder("node_modules/minisearch/dist/es"),
    "/notebook/script/": folder("packages/notebook/dist"),
  };
  const server = staticServer(mounts, { headers: { "content-security-policy": "default-src 'self'" } });
  const { browser, address, close } = await browserFor(server);
  return {
    close,
    async open(path, viewport, dark = false) {
      const page = await browser.newPage();
      const said: string[] = [];
      page.on("console", (message) => said.push(message.text()));
      page.on("pageerror", (error) => said.push(String(error)));
      await page.setViewport(viewport);
      await page.emulateMediaFeatures([{ name: "prefers-color-scheme", value: dark ? "dark" : "light" }]);
      await page.goto(address + path, { waitUntil: "load" });
      await page.waitForNetworkIdle({ idleTime: 100 });
      return { page, said };
    },
  };
}
