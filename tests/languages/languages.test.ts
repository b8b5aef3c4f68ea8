import { readFileSync } from "node:fs";
import { createServer } from "node:http";
import { afterAll, beforeAll, expect, test, vi } from "vitest";
import { browserFor, folder } from "../demo/browser.js";

// The languages of the self-contained script, under a policy that lets a page use nothing but its own files.

const policy = "default-src 'self'; require-trusted-types-for 'script'; trusted-types meshwright";

const pageOf = (lang: string, ...scripts: readonly string[]): string =>
  `<!doctype html><html lang="${lang}"><meta charset="utf-8"><link rel="icon" href="data:,">` +
  scripts.map((src) => `<script src="${src}" defer></script>`).join("") +
  `<mw-build src="/limpet.json"></mw-build><p><mw-value figure="standing" of="rear">inside</mw-value></p><mw-working></mw-working>`;

const pages: Readonly<Record<string, string>> = {
  "/english": pageOf("en", "/meshwright.js"),
  "/unknown": pageOf("it", "/meshwright.js"),
  "/german": pageOf("de", "/meshwright.js"),
  "/joined": pageOf("ar-EG", "/cache/joined.js"),
  "/own": pageOf("fr", "/cache/joined.js", "/figures-fr.js"),
};
let asked: string[] = [];
const server = createServer((request, response) => {
  const path = request.url ?? "/";
  asked.push(path);
  const page = pages[path];
  if (page) return void response.setHeader("content-security-policy", policy).end(page);
  const file =
    path === "/limpet.json"
      ? "seeds/limpet.json"
      : `packages/elements/dist/${path.replace("/cache/joined.js", "/meshwright-article.js").slice(1)}`;
  try {
    response.setHeader("content-type", path.endsWith(".js") ? "text/javascript" : "application/json");
    response.end(readFileSync(folder(file)));
  } catch {
    response.writeHead(404).end();
  }
});
let site: Awaited<ReturnType<typeof browserFor>>;

beforeAll(async () => {
  site = await browserFor(server);
});

afterAll(() => site?.close());

test.each([
  ["/english", "inside", "Up to here", []],
  ["/unknown", "inside", "Up to here", []],
  ["/german", "im Bereich", "Bis hierher", ["/figures-de.js", "/reports-de.js"]],
  // Joined with other scripts by an optimiser: the second file is not beside it, and the author's text stays.
  ["/joined", "inside", "", ["/cache/meshwright-second.js"]],
  ["/own", "dans la plage", "", ["/cache/meshwright-second.js", "/figures-fr.js"]],
])("%s: %s", async (path, standing, heading, files) => {
  asked = [];
  const page = await site.browser.newPage();
  const faults: string[] = [];
  page.on("pageerror", (error) => faults.push(String(error)));
  await page.goto(site.address + path.slice(1), { waitUntil: "networkidle0" });
  await page.waitForFunction(
    (standing, heading) => {
      const shadowOf = (name: string) => document.querySelector(name)!.shadowRoot;
      const told = shadowOf("mw-working")?.querySelector("th:nth-child(5)")?.textContent ?? "";
      // While it is right, the author's own text is what is shown.
      const shown =
        shadowOf("mw-value")?.textContent!.trim() || document.querySelector("mw-value")!.textContent!.trim();
      return shown === standing && told === heading;
    },
    {},
    standing,
    heading,
  );
  // A file that is not there leaves no other trace than that it was asked for.
  const tables = () =>
    asked.filter((one) => /\/(meshwright-second|(figures|reports|words|tools)-\w+)\.js$/.test(one)).sort();
  await vi.waitFor(() => expect(tables()).toEqual(files), { timeout: 10_000 });
  await page.waitForNetworkIdle();
  expect(tables()).toEqual(files);
  expect(faults).toEqual([]);
  await page.close();
});
