import { createRequire } from "node:module";
import { readFileSync } from "node:fs";
import type { Page } from "puppeteer-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { applyChanges, readBuild } from "@meshwright/calc/document";
import type { ChangeSet } from "@meshwright/calc/drivetrain";
import { evaluate } from "@meshwright/calc/evaluate";
import { figureOf, type FigureQuery } from "@meshwright/calc/report";
import { demoBrowser, folder, type DemoBrowser, type Opened } from "./browser.js";

const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const { build } = readBuild(readFileSync(folder("seeds/limpet.json"), "utf8"));

let demo: DemoBrowser;

beforeAll(async () => {
  demo = await demoBrowser();
});

afterAll(() => demo?.close());

/** Opens the article; what the page says to the console is kept. */
const open = (path = "", { width = 1280, dark = false } = {}): Promise<Opened> =>
  demo.open(path, { width, height: 900 }, dark);

interface Shown {
  readonly attributes: Record<string, string>;
  readonly text: string;
}

/** Every figure in the sentences, as it is on the screen, one frame from now. */
const figuresOn = (page: Page): Promise<Shown[]> =>
  page.evaluate(
    () =>
      new Promise<Shown[]>((resolve) =>
        requestAnimationFrame(() =>
          resolve(
            [...document.querySelectorAll("mw-value")].map((element) => ({
              attributes: Object.fromEntries([...element.attributes].map(({ name, value }) => [name, value])),
              // While it is right, the author's own text is what is shown.
              text:
                element.shadowRoot!.querySelector("[part~=value]")!.textContent! ||
                element.textContent!.replace(/[^\S\u00a0]+/g, " ").trim(),
            })),
          ),
        ),
      ),
  );

/** What the figures should be once a reader has made these changes. */
function expected(shown: readonly Shown[], changes: ChangeSet): string[] {
  const version = (id: string) => {
    const own = id === "article" ? {} : build!.alternatives!.find((one) => one.id === id)!.changes;
    return evaluate(applyChanges(build!, own).build!);
  };
  const readers = evaluate(applyChanges(build!, changes).build!);
  return shown.map(({ attributes: { at, ...query } }) =>
    figureOf(at ? version(at) : readers, query as unknown as FigureQuery, { version }),
  );
}

const texts = (shown: readonly Shown[]): string[] => shown.map(({ text }) => text);

/** Puts the focus on a count, as the Tab key would. */
const focusOn = (page: Page, of: string): Promise<void> =>
  page.evaluate(
    (address) =>
      document.querySelector(`mw-teeth[of="${address}"]`)!.shadowRoot!.querySelector<HTMLElement>("input")!.focus(),
    of,
  );

const pressed = async (page: Page, label: string): Promise<void> => {
  await page.evaluate((text) => {
    const buttons = [...document.querySelector("mw-edits")!.shadowRoot!.querySelectorAll("button")];
    buttons.find((button) => button.textContent!.includes(text))!.focus();
  }, label);
  await page.keyboard.press("Enter");
};

// A browser takes its time on a small machine that does other work as well.
describe("a reader of the article", { timeout: 120_000 }, () => {
  test("changes a count by keyboard: every figure follows within a frame, survives a reload, and comes back", async () => {
    const { page, said } = await open();
    const changes = { "primary.driver": 17, "primary.driven": 66 };
    const before = await figuresOn(page);
    expect(texts(before)).toEqual(expected(before, {}));

    await focusOn(page, "primary.driver");
    await page.keyboard.press("ArrowUp");
    await page.keyboard.press("ArrowUp");
    await focusOn(page, "primary.driven");
    for (let n = 0; n < 4; n++) await page.keyboard.press("ArrowUp");
    const after = await figuresOn(page);
    expect(texts(after)).toEqual(expected(before, changes));
    expect(texts(after)).not.toEqual(texts(before));

    await page.waitForFunction(() => location.hash.length > 1);
    await page.reload({ waitUntil: "networkidle0" });
    expect(texts(await figuresOn(page))).toEqual(expected(before, changes));

    await pressed(page, "the author’s");
    expect(texts(await figuresOn(page))).toEqual(texts(before));
    expect(said).toEqual([]);
    await page.close();
  });

  test("sees that the tempting pair does not fit", async () => {
    const { page } = await open();
    await focusOn(page, "primary.driver");
    await page.keyboard.type("17");
    await page.keyboard.press("Enter");
    await focusOn(page, "primary.driven");
    await page.keyboard.type("66");
    await page.keyboard.press("Enter");
    const verdicts = (await figuresOn(page)).filter(({ attributes }) => attributes.figure === "fit" && !attributes.at);
    expect(texts(verdicts)).toEqual(["too far apart"]);
    await page.close();
  });

  test("scrolls sideways on no screen", async () => {
    for (const width of [320, 375, 1280]) {
      const { page } = await open("", { width });
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(width);
      await page.close();
    }
  });

  test.each([
    ["a narrow dark screen", 375, true],
    ["a wide light one", 1280, false],
  ])("on %s: axe finds nothing, the console stays empty", async (_, width, dark) => {
    const { page, said } = await open("", { width, dark });
    await page.evaluate(() => document.querySelectorAll("details").forEach((sheet) => (sheet.open = true)));
    await page.evaluate(axe);
    const violations = await page.evaluate(async () => {
      const { axe } = globalThis as unknown as {
        axe: { run(): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> };
      };
      const { violations } = await axe.run();
      return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 80)).join(" ")}`);
    });
    expect(violations).toEqual([]);
    expect(said).toEqual([]);
    await page.close();
  });
});
