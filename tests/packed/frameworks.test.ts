// The tarballs in other people's frameworks and runtimes, each installed in a clean folder: compiled strictly, drawn on a server,
// taken over in a browser.
import { existsSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import type { Page } from "puppeteer-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { at } from "../../scripts/lib/paths.js";
import { run } from "../../scripts/lib/run.js";
import { staticServer } from "../../scripts/lib/server.js";
import { browserFor } from "../demo/browser.js";
import { cleanFolder, install, nodeIn, tarballsIn, type Tarballs } from "./install.js";

const packs = cleanFolder();
let tarballs: Tarballs;

beforeAll(async () => {
  tarballs = await tarballsIn(packs.folder);
});
afterAll(() => packs.remove());

const caseOf = (name: string): string => at("tests", "packed", "cases", name);
const bin = (folder: string, name: string, file: string): string => join(folder, "node_modules", name, file);

/** What a page shows, with what it said to the console until then. */
async function opened(folder: string, look: (page: Page) => Promise<void>): Promise<readonly string[]> {
  const { browser, address, close } = await browserFor(staticServer({ "/": folder }));
  try {
    const page = await browser.newPage();
    const said: string[] = [];
    page.on("console", (message) => said.push(message.text()));
    page.on("pageerror", (error) => said.push(String(error)));
    await page.goto(address, { waitUntil: "networkidle0" });
    await look(page);
    return said;
  } finally {
    await close();
  }
}

const text = (page: Page, selector: string): Promise<string> =>
  page.evaluate((one) => {
    const element = document.querySelector(one)!;
    const drawn = element.shadowRoot?.querySelector<HTMLElement>("[part=value]");
    return (drawn?.innerText || element.textContent || "").trim();
  }, selector);

/** One more tooth, as a reader asks for it. */
async function oneMore(page: Page): Promise<void> {
  await page.evaluate(() => document.querySelector<HTMLElement>("mw-teeth")!.focus());
  await page.keyboard.press("ArrowUp");
  await page.waitForFunction(() => document.querySelector("#changes")!.textContent === "1");
}

const frameworks = {
  react: (folder: string) => nodeIn(folder, bin(folder, "typescript", "bin/tsc"), "-p", "."),
  vue: (folder: string) => nodeIn(folder, bin(folder, "vue-tsc", "bin/vue-tsc.js"), "-p", "."),
  svelte: (folder: string) =>
    nodeIn(folder, bin(folder, "svelte-check", "bin/svelte-check"), "--tsconfig", "./tsconfig.json"),
};

describe.each(Object.entries(frameworks))("%s", (name, compile) => {
  const stranger = cleanFolder();
  const { folder } = stranger;

  beforeAll(() => install(folder, tarballs, { from: caseOf(name), packages: ["calc", "elements"] }));
  afterAll(() => stranger.remove());

  it("is typed, and a wrong word does not compile", async () => {
    const { code, output } = await compile(folder);
    expect(output).not.toMatch(/error TS|Error:/);
    expect(code, output).toBe(0);
    if (name !== "svelte") return;
    // Its templates cannot say what they expect to be refused.
    const wrong = join(folder, "src", "Refused.svelte");
    const lines = [
      '<script lang="ts">import type {} from "@meshwright/elements/svelte";</script>',
      '<mw-value figure="reducton"></mw-value>',
    ];
    writeFileSync(wrong, lines.join("\n"));
    expect((await compile(folder)).output).toMatch(/"reducton"' is not assignable/);
    rmSync(wrong);
  });

  it("is drawn on a server, and taken over in a browser without a word", async () => {
    const vite = bin(folder, "vite", "bin/vite.js");
    const server = existsSync(join(folder, "src", "server.tsx")) ? "src/server.tsx" : "src/server.ts";
    for (const parameters of [
      ["--outDir", "out/client"],
      ["--outDir", "out/server", "--ssr", server],
    ]) {
      const { code, output } = await nodeIn(folder, vite, "build", ...parameters);
      expect(code, output).toBe(0);
    }
    writeFileSync(
      join(folder, "draw.js"),
      'const { render } = await import("./out/server/server.js");\nprocess.stdout.write(await render());\n',
    );
    const drawn = await nodeIn(folder, "draw.js");
    expect(drawn.code, drawn.output).toBe(0);
    expect(drawn.output).toContain("44.30");
    const index = join(folder, "out", "client", "index.html");
    writeFileSync(
      index,
      readFileSync(index, "utf8").replace("<!--app-->", () => drawn.output),
    );
    const said = await opened(join(folder, "out", "client"), async (page) => {
      await page.waitForFunction(() => customElements.get("mw-value"));
      expect(await text(page, "mw-value")).toBe("44.30");
      await oneMore(page);
      expect(await text(page, "mw-value")).toBe("41.53");
      if (name === "react") expect(await text(page, "#worked")).toBe("62/15");
    });
    expect(said).toEqual([]);
  });
});

describe("a page", () => {
  const stranger = cleanFolder();
  const { folder } = stranger;

  beforeAll(() => install(folder, tarballs, { packages: ["calc", "elements"] }));
  afterAll(() => stranger.remove());

  it.each(["meshwright.js", "meshwright-article.js"])(
    "comes alive by a script tag with %s and its hash",
    async (file) => {
      const place = "node_modules/@meshwright/elements/dist";
      const { files } = JSON.parse(readFileSync(join(folder, place, "files.json"), "utf8")) as {
        files: { file: string; integrity: string }[];
      };
      const { integrity } = files.find((one) => one.file === file)!;
      writeFileSync(
        join(folder, "index.html"),
        `<!doctype html><html lang="en"><title>An article</title><link rel="icon" href="data:,">
<script src="${place}/${file}" integrity="${integrity}" defer></script>
<mw-build stages="Spur and pinion: 15 to 62; Gear row: 18 to 31 to 45" front="Ring: 13 to 38; Hub: 15 to 22"></mw-build>
<p>With <mw-teeth of="spur-and-pinion.driver">15</mw-teeth> teeth <mw-value of="front">44.30</mw-value>.</p>
<output id="changes">0</output></html>`,
      );
      const said = await opened(folder, async (page) => {
        await page.evaluate(() =>
          document.addEventListener("mw-change", () => (document.querySelector("#changes")!.textContent = "1")),
        );
        await oneMore(page);
        expect(await text(page, "mw-value")).toBe("41.53");
      });
      expect(said).toEqual([]);
    },
  );
});

describe("other runtimes", () => {
  const stranger = cleanFolder();
  const { folder } = stranger;

  beforeAll(() => install(folder, tarballs, { from: caseOf("runtimes") }));
  afterAll(() => stranger.remove());

  it.each([
    ["deno", ["run", "--allow-read", "--allow-env", "--allow-sys", "--node-modules-dir=manual", "figure.ts"]],
    ["deno", ["check", "--node-modules-dir=manual", "figure.ts"]],
    ["bun", ["figure.ts"]],
  ] as const)("%s takes the packages as they are: %j", async (name, parameters) => {
    const command = join(folder, "node_modules", ".bin", name);
    const { code, output } = await run(command, [...parameters], {
      cwd: folder,
      env: { DENO_DIR: join(folder, ".deno"), NO_COLOR: "1", DENO_NO_UPDATE_CHECK: "1" },
    });
    expect(code, output).toBe(0);
    if (parameters[0] !== "check") expect(output.trim()).toBe("62/15 0");
  });
});
