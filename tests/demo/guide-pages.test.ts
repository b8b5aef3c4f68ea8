import { readdirSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Page, Viewport } from "puppeteer-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { buildFromAttributes } from "@meshwright/calc/document";
import { figureSpecs } from "@meshwright/calc/report";
import { checkFigures } from "../../packages/figures/src/index.js";
import { demoBrowser, folder, type DemoBrowser, type Opened } from "./browser.js";
import { attributesOf, elementsIn, sourceOf } from "./page.js";

// The guide's pages in a browser: nothing said to the console, nothing that a reader with other ears and hands stumbles over,
// everything alive, and every tag that can be copied does what it shows.

const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const names = readdirSync(folder("demo/guide")).filter((name) => name.endsWith(".html"));
const desk: Viewport = { width: 1200, height: 900 };
const phone: Viewport = { width: 375, height: 740, isMobile: true, hasTouch: true };

let demo: DemoBrowser;
beforeAll(async () => {
  demo = await demoBrowser();
});
afterAll(() => demo?.close());

/** What keeps somebody from using the page, in lines. */
async function barriers(page: Page): Promise<readonly string[]> {
  await page.evaluate(axe);
  return page.evaluate(async () => {
    const { axe: tool } = globalThis as unknown as {
      axe: {
        run(options: object): Promise<{
          violations: readonly { id: string; nodes: readonly { target: unknown; failureSummary: string }[] }[];
        }>;
      };
    };
    const { violations } = await tool.run({ resultTypes: ["violations"] });
    return violations.flatMap(({ id, nodes }) =>
      nodes.map(({ target, failureSummary }) => `${id} ${JSON.stringify(target)} ${failureSummary}`),
    );
  });
}

/** Elements of ours that do not live: not defined, or with their build lost. */
const dead = (page: Page): Promise<readonly string[]> =>
  page.evaluate(async () => {
    await Promise.all(
      [...document.querySelectorAll<HTMLElement & { checked: Promise<unknown> }>("mw-build")].map(
        ({ checked }) => checked,
      ),
    );
    return [...document.querySelectorAll<HTMLElement>("article *")]
      .filter(({ localName }) => localName.startsWith("mw-"))
      .filter(
        (element) =>
          !customElements.get(element.localName) ||
          !(element.shadowRoot?.childElementCount || element.localName === "mw-build"),
      )
      .map(({ outerHTML }) => outerHTML.slice(0, 120));
  });

const isWider = (page: Page): Promise<boolean> =>
  page.evaluate(() => document.documentElement.scrollWidth > document.documentElement.clientWidth);

async function look({ page, said }: Opened): Promise<void> {
  expect(await dead(page)).toEqual([]);
  expect(await barriers(page)).toEqual([]);
  expect(await isWider(page)).toBe(false);
  expect(said).toEqual([]);
  await page.close();
}

describe.each(names)("%s", (name) => {
  test("is whole at a desk, by day", async () => look(await demo.open(`guide/${name}`, desk)));
  test("is whole on a telephone, by night", async () => look(await demo.open(`guide/${name}`, phone, true)));
});

test("every element and every figure stands alive beside its tag", () => {
  const gallery = elementsIn(sourceOf("guide/elements.html"));
  const { tags } = JSON.parse(readFileSync(folder("packages/elements/dist/html-data.json"), "utf8")) as {
    tags: { name: string }[];
  };
  const shown = gallery.map(({ tagName }) => tagName);
  for (const { name } of tags) expect(shown).toContain(name);
  const figures = elementsIn(sourceOf("guide/figures.html")).filter(({ tagName }) => tagName === "mw-value");
  expect([...new Set(figures.map((one) => attributesOf(one).figure))].sort()).toEqual(Object.keys(figureSpecs).sort());
});

test("what stands written in the gallery and among the figures is right", () => {
  for (const name of ["elements.html", "figures.html", "looks.html", "versions.html"]) {
    const { differences } = checkFigures(sourceOf(`guide/${name}`));
    expect(differences, name).toEqual([]);
  }
});

test("a reader finds a word on any page, by keys alone", async () => {
  const { page, said } = await demo.open("guide/index.html", desk);
  await page.focus("nav input");
  await page.keyboard.type("turn-count");
  await page.waitForSelector(".found li a");
  const links = await page.$$eval(".found li a", (all) => all.map((link) => link.getAttribute("href")));
  expect(links[0]).toBe("elements.html#mw-turn-count");
  await page.keyboard.press("Tab");
  await Promise.all([page.waitForNavigation(), page.keyboard.press("Enter")]);
  expect(page.url()).toMatch(/guide\/elements\.html#mw-turn-count$/);
  expect(said).toEqual([]);
  await page.close();
});

test("a colour that is tried changes the playground, and stands there to be copied", async () => {
  const { page, said } = await demo.open("guide/looks.html", desk);
  await page.$eval('[data-property="--mw-accent"]', (input) => {
    (input as HTMLInputElement).value = "#ff0000";
    input.dispatchEvent(new Event("input"));
  });
  expect(await page.$eval("[data-chosen]", (code) => code.textContent)).toContain("--mw-accent: #ff0000;");
  const drawn = await page.$eval("[data-playground] mw-teeth", (element) =>
    getComputedStyle(element).getPropertyValue("--_accent"),
  );
  expect(drawn.trim()).toBe("#ff0000");
  expect(said).toEqual([]);
  await page.close();
});

test("the files can be downloaded, and their hashes are shown", async () => {
  const { page, said } = await demo.open("guide/files.html", desk);
  const shown = await page.$$eval("[data-file]", (all) => all.map((one) => one.textContent));
  expect(shown).toHaveLength(4);
  for (const text of shown) expect(text).toMatch(/^[\d.]+ kB, [\d.]+ kB compressed\s*sha384-[\w+/=]{64}$/);
  const answers = await page.$$eval("a[download]", (all) =>
    Promise.all(all.map(async (link) => (await fetch((link as HTMLAnchorElement).href)).status)),
  );
  expect(new Set(answers)).toEqual(new Set([200]));
  expect(said).toEqual([]);
  await page.close();
});

test("every tag that can be copied lives where it is pasted", async () => {
  const { page, said } = await demo.open("guide/files.html", desk);
  const snippets = names.flatMap((name) =>
    elementsIn(sourceOf(`guide/${name}`))
      .filter((one) => attributesOf(one)["data-snippet"] === "html")
      .map((one) => ({ name, html: (one.childNodes[0] as { value: string }).value })),
  );
  expect(snippets.length).toBeGreaterThan(50);
  const limpet = readFileSync(folder("seeds/limpet.json"), "utf8");
  let heard = 0;
  for (const { name, html } of snippets) {
    // A script's tag, and a placeholder of a document, are not for here.
    if (!/<mw-(?!build)/.test(html)) continue;
    await page.evaluate(
      (inside, json) => {
        const article = document.querySelector("article")!;
        article.replaceChildren();
        const build = document.createElement("mw-build");
        build.id = "limpet";
        build.setAttribute("json", json);
        const post = document.createElement("section");
        post.innerHTML = inside;
        article.append(...(post.querySelector("mw-build") ? [] : [build]), post);
      },
      html,
      // What stands above a sentence on the first page is its own build.
      name === "index.html" ? plover(snippets) : limpet,
    );
    expect(await dead(page), html).toEqual([]);
    expect(said.slice(heard), html).toEqual([]);
    heard = said.length;
  }
  await page.close();
});

/** The build of the guide's first page, as the document that its attributes stand for. */
function plover(snippets: readonly { readonly html: string }[]): string {
  const tag = elementsIn(
    snippets.find(({ html }) => html.includes('id="plover"') && html.includes("Gear row"))!.html,
  ).find(({ tagName }) => tagName === "mw-build")!;
  const { id: _, ...attributes } = attributesOf(tag);
  return JSON.stringify(buildFromAttributes(attributes).build);
}
