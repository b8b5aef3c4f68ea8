// Servers, site makers and bundlers.
import assert from "node:assert/strict";
import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { evaluate } from "@mdx-js/mdx";
import * as jsxRuntime from "react/jsx-runtime";
import { renderToStaticMarkup } from "react-dom/server";
import { at } from "../../../scripts/lib/paths.js";
import { run, runNode } from "../../../scripts/lib/run.js";
import { bundled, commandPath, once } from "../lib/software.js";
import { article, page, plainSentence, small } from "../lib/snippets.js";

const all = ["chromium", "firefox", "webkit"];
const examples = at("tests", "hosts", "examples");

/** Runs code as a module of its own in a plain Node; resolves to what it printed as JSON. */
const inNode = (code) => once(`node ${code}`, () => runInNode(code));

async function runInNode(code) {
  const { code: status, output } = await run(process.execPath, ["--input-type=module", "-e", code], {
    cwd: at("tests", "hosts"),
  });
  if (status !== 0) throw new Error(output.slice(0, 2000));
  return JSON.parse(output.trim().split("\n").at(-1));
}

/** The page that Eleventy makes of the example's post. */
async function eleventyPage() {
  const output = mkdtempSync(join(tmpdir(), "hosts-eleventy-"));
  try {
    const { code, output: said } = await runNode(
      commandPath("@11ty/eleventy", "eleventy"),
      [`--input=.`, `--output=${output}`, "--quiet"],
      { cwd: join(examples, "eleventy") },
    );
    assert.equal(code, 0, said);
    return readFileSync(join(output, "post", "index.html"), "utf8");
  } finally {
    rmSync(output, { recursive: true, force: true });
  }
}

async function livingArticle(t, markup) {
  const window = await t.open(markup);
  const seen = await window.run(async () => {
    await settled();
    const before = reads("p:has(mw-value)");
    step(1);
    await settled();
    return { before, after: [count(), shown()], wrong };
  });
  assert.deepEqual(seen, { before: plainSentence, after: ["16", "41.53"], wrong: [] });
}

export const subject = "Servers, site makers and bundlers";

export const rows = [
  {
    row: 40,
    title: "A server's import crashes",
    software: [],
    engines: ["node"],
    async run() {
      const { exports: entries } = JSON.parse(readFileSync(at("packages", "elements", "package.json"), "utf8"));
      // A name with a star stands for every file that fits.
      const named = ([name, target]) => {
        const path = target.default ?? target;
        if (!name.includes("*")) return [name];
        const [before, after] = at("packages", "elements", path).split("*");
        const files = readdirSync(dirname(`${before}x`)).map((file) => join(dirname(`${before}x`), file));
        const fitting = files.filter((file) => file.startsWith(before) && file.endsWith(after));
        return fitting.map((file) => name.replace("*", file.slice(before.length, -after.length)));
      };
      const names = Object.entries(entries)
        // Types are for compilers, and JSON is read and not run.
        .filter(([name, target]) => !name.endsWith(".json") && (typeof target === "string" || "default" in target))
        .flatMap(named)
        .map((name) => name.replace(/^\./, "@meshwright/elements"));
      assert.ok(names.length > 10);
      const found = await inNode(`
        const before = Object.getOwnPropertyNames(globalThis).join();
        const failed = [];
        for (const name of ${JSON.stringify(names)}) await import(name).catch((error) => failed.push(name + ": " + error.message));
        console.log(JSON.stringify({ failed }));`);
      assert.deepEqual(found, { failed: [] });
    },
  },
  {
    title: "A server draws each element as its fallback",
    software: ["@lit-labs/ssr"],
    engines: all,
    async run(t) {
      const tags = [
        "mw-ratio-summary",
        "mw-overdrive-gauge",
        "mw-working",
        "mw-change-table",
        "mw-wheel-speed",
        "mw-train-drawing",
        "mw-edits",
      ];
      const { markup } = await inNode(`
        import { render } from "@lit-labs/ssr";
        import { collectResult } from "@lit-labs/ssr/lib/render-result.js";
        import { html } from "lit";
        import { unsafeStatic, html as staticHtml } from "lit/static-html.js";
        await import("@meshwright/elements/all");
        const inner = ${JSON.stringify(article + tags.map((tag) => `<${tag}><table><tr><td>As published ${tag}</td></tr></table></${tag}>`).join(""))};
        const { html: plain } = await import("lit");
        const template = Object.assign([inner], { raw: [inner] });
        console.log(JSON.stringify({ markup: await collectResult(render(plain(template))) }));`);
      // What was drawn reads as the article does, before any script.
      const still = await t.open(page(`<main>${markup}</main>`, { library: "" }));
      const text = await still.run(() => reads("main"));
      assert.ok(text.startsWith(plainSentence), text);
      for (const tag of tags) assert.equal(text.split(`As published ${tag}`).length, 2, `${tag}: ${text}`);
      // And lives once the script is there.
      const live = await t.open(page(`<main>${markup}</main>`));
      const seen = await live.run(async () => {
        await settled();
        const before = reads(".sentence");
        step(1);
        await settled();
        return { before, after: [count(), shown()], wrong };
      });
      assert.deepEqual(seen, { before: plainSentence, after: ["16", "41.53"], wrong: [] });
    },
  },
  {
    title: "Eleventy makes a page of a post",
    software: ["@11ty/eleventy"],
    engines: all,
    async run(t) {
      await livingArticle(t, await once("eleventy", eleventyPage));
    },
  },
  {
    title: "MDX makes a page of a post",
    software: ["@mdx-js/mdx", "react-dom"],
    engines: all,
    async run(t) {
      const { default: Content } = await evaluate(readFileSync(join(examples, "article.mdx"), "utf8"), jsxRuntime);
      await livingArticle(t, page(renderToStaticMarkup(jsxRuntime.jsx(Content, {}))));
    },
  },
  {
    title: "A bundler takes single elements, in a page that builds them statically",
    software: ["lit"],
    engines: all,
    async run(t) {
      const code = await bundled(readFileSync(join(examples, "static.js"), "utf8"));
      await livingArticle(t, page(article, { library: t.site.script(code).slice(1) }));
      const window = await t.open(page(`<mw-build></mw-build>`, { library: t.site.script(code).slice(1) }));
      const seen = await window.run(async (json) => {
        document.querySelector("mw-build").json = json;
        await settled();
        return { findings: findings(), others: !!customElements.get("mw-ratio-summary"), wrong };
      }, small);
      assert.deepEqual(seen, { findings: [], others: false, wrong: [] });
    },
  },
];
