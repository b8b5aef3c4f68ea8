import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { findBrowsers } from "../../scripts/lib/browsers.js";
import { listen, staticServer } from "../../scripts/lib/server.js";
import { startEngine } from "../hosts/lib/engine.js";
import { folder } from "./browser.js";
import { pastedHere } from "./snippets.js";

// The guide's pages in the other two engines: everything alive, what can be copied as well where it is pasted, nothing in the
// console, and nothing that other ears and hands stumble over.

const names = readdirSync(folder("demo/guide")).filter((name) => name.endsWith(".html"));

/** The demo once more, its guide's pages with a line that notes what is said to the console from the first moment on. */
const site = mkdtempSync(join(tmpdir(), "meshwright-guide-"));
cpSync(folder("demo"), site, { recursive: true });
const noted = `<script>
  globalThis.said = [];
  for (const name of ["error", "warn"]) console[name] = (...words) => void said.push([name, ...words].join(" "));
  addEventListener("error", ({ message, target }) => said.push(message ?? "not loaded: " + (target.src ?? target.href)), true);
  addEventListener("unhandledrejection", ({ reason }) => said.push(String(reason)));
</script>`;
for (const name of names) {
  const path = join(site, "guide", name);
  writeFileSync(path, readFileSync(path, "utf8").replace("<head>", `<head>${noted}`));
}

const server = staticServer({
  "/": site,
  "/meshwright/": folder("packages/elements/dist"),
  "/guide/minisearch/": folder("node_modules/minisearch/dist/es"),
  "/notebook/script/": folder("packages/notebook/dist"),
  "/axe/": folder("node_modules/axe-core"),
});
let address: string;
beforeAll(async () => {
  address = `http://127.0.0.1:${await listen(server, 0)}/`;
});
afterAll(() => {
  server.close();
  server.closeAllConnections();
  rmSync(site, { recursive: true, force: true });
});

interface Engine {
  open(url: string): Promise<{ run<T>(action: () => T | Promise<T>): Promise<T> }>;
  stop(): Promise<void>;
}

describe.each(["firefox", "webkit"] as const)("in %s", (name) => {
  let engine: Engine;
  beforeAll(async () => {
    expect(findBrowsers()[name === "webkit" ? "webKitDriver" : "firefox"]).toBeTruthy();
    engine = (await startEngine(name)) as Engine;
  });
  afterAll(() => engine?.stop());

  test.each(names)(
    "%s is whole",
    async (page) => {
      const opened = await engine.open(`${address}guide/${page}`);
      const found = await opened.run(async () => {
        interface Build extends HTMLElement {
          readonly checked: Promise<readonly { readonly message: string }[]>;
        }
        await customElements.whenDefined("mw-working");
        const builds = [...document.querySelectorAll<Build>("mw-build")];
        const findings = (await Promise.all(builds.map(({ checked }) => checked))).flat();
        await new Promise<void>((resolve, reject) => {
          const script = document.createElement("script");
          script.src = "/axe/axe.min.js";
          script.onload = () => resolve();
          script.onerror = () => reject(new Error("axe is not there"));
          document.head.append(script);
        });
        const { axe: tool } = globalThis as unknown as {
          axe: { run(): Promise<{ violations: readonly { id: string; nodes: readonly { target: unknown }[] }[] }> };
        };
        const { violations } = await tool.run();
        const dead = [...document.querySelectorAll("article *")].filter(
          ({ localName, shadowRoot }) =>
            localName.startsWith("mw-") && localName !== "mw-build" && !shadowRoot?.childElementCount,
        );
        const { said } = globalThis as unknown as { said: readonly string[] };
        return [
          ...said,
          ...findings.map(({ message }) => message),
          ...violations.map(({ id, nodes }) => `${id} ${nodes.map(({ target }) => String(target)).join(" ")}`),
          ...dead.map(({ outerHTML }) => outerHTML.slice(0, 120)),
        ];
      });
      expect(found).toEqual([]);
      expect(await opened.run(pastedHere)).toEqual([]);
    },
    120_000,
  );
});
