import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser } from "puppeteer-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { Hands, notebookBrowser } from "../notebook/page.js";

// Every state of the page as other ears and hands meet it: axe is silent in each.

const axe = readFileSync(new URL("../../node_modules/axe-core/axe.min.js", import.meta.url), "utf8");
const folder = mkdtempSync(join(tmpdir(), "notebook-states-"));
let browser: Browser;
let address: string;
let close: () => Promise<void>;

async function isSilent(hands: Hands, what: string): Promise<void> {
  const session = await hands.page.createCDPSession();
  await session.send("Runtime.evaluate", { expression: `globalThis.axe ?? (() => {${axe}})()` });
  await session.detach();
  const found = await hands.page.evaluate(async () => {
    const { axe: tool } = globalThis as unknown as {
      axe: {
        run(root: Document, options: object): Promise<{ violations: { id: string; nodes: { target: unknown }[] }[] }>;
      };
    };
    const { violations } = await tool.run(document, { resultTypes: ["violations"] });
    return violations.map(({ id, nodes }) => `${id}: ${JSON.stringify(nodes.map(({ target }) => target))}`);
  });
  expect(found, what).toEqual([]);
}

const pressNamed = (hands: Hands, name: string): Promise<void> =>
  hands.page.evaluate((wanted) => {
    const walk = (root: ParentNode): HTMLElement | undefined => {
      for (const one of root.querySelectorAll<HTMLElement>("*")) {
        if (/^(BUTTON|SUMMARY|A)$/.test(one.tagName) && one.textContent!.trim() === wanted) return one;
        const inside = one.shadowRoot && walk(one.shadowRoot);
        if (inside) return inside;
      }
      return undefined;
    };
    const found = walk(document.querySelector("mw-notebook")!.shadowRoot!);
    if (!found) throw new Error(`Nothing is called ${wanted}.`);
    found.click();
  }, name);

async function open(hands: Hands, path: string): Promise<void> {
  const [chooser] = await Promise.all([hands.page.waitForFileChooser(), pressNamed(hands, "Open a file")]);
  await chooser.accept([path]);
}

describe("every state of the notebook", () => {
  beforeAll(async () => {
    ({ browser, address, close } = await notebookBrowser());
  });
  afterAll(async () => {
    await close();
    rmSync(folder, { recursive: true, force: true });
  });

  it.each([
    ["on a desk", 1280],
    ["on a phone", 375],
  ])(
    "is silent to axe %s",
    async (_, width) => {
      const hands = await Hands.open(browser, `${address}notebook/?open=example`, width);
      await hands.until(/Saved in this browser only/);
      await hands.until(/Before the first run/);
      await isSilent(hands, "the example");
      for (const [choose, sign] of [
        ["Motor", /Motor/],
        ["Where it splits", /Where the drive splits/],
        ["Front", /Take this axle off/],
        ["The whole", /The whole drivetrain/],
      ] as const) {
        await pressNamed(hands, choose);
        await hands.until(sign);
        await isSilent(hands, choose);
      }
      const name = await hands.page.waitForSelector("mw-notebook >>> [data-name=primary]");
      await name!.evaluate((one) => (one as HTMLElement).click());
      await hands.until(/Gears that fit/);
      await pressNamed(hands, "Everything else that can be said of it");
      await isSilent(hands, "a stage, all that can be said of it");
      await pressNamed(hands, "It is something else …");
      await hands.until(/Two gears I counted/);
      await isSilent(hands, "what else a stage may be");
      for (const panel of ["Save a file", "Notebooks"]) {
        await pressNamed(hands, panel);
        await isSilent(hands, panel);
      }
      const seed = JSON.parse(readFileSync(join(process.cwd(), "seeds", "limpet.json"), "utf8")) as {
        stages: { driver: number }[];
      };
      seed.stages[0]!.driver = 17;
      const path = join(folder, `other-${width}.json`);
      writeFileSync(path, JSON.stringify(seed));
      await open(hands, path);
      await hands.until(/opened beside yours\./);
      await isSilent(hands, "opened beside");
      await hands.page.evaluate(() => {
        const root = document.querySelector("mw-notebook")!.shadowRoot!;
        [...root.querySelectorAll("button")].find((one) => one.textContent!.startsWith("Compare and merge"))!.click();
      });
      await hands.until(/Make a third notebook of both/);
      await isSilent(hands, "what both changed");
      await pressNamed(hands, "No");
      await isSilent(hands, "a site that takes no files");
      for (const place of ["a site that allows frames", "text"])
        await pressNamed(hands, place).then(
          () => isSilent(hands, place),
          () => undefined,
        );
      expect(hands.said).toEqual([]);
      await hands.page.close();
    },
    60_000,
  );

  it("says which tab edits, and that nothing can be saved, in words that axe has nothing against", async () => {
    const first = await Hands.open(browser, `${address}notebook/?open=example`);
    await first.until(/Saved in this browser only/);
    const second = await Hands.open(browser, first.page.url().replace("?open=example", ""));
    await second.until(/Being edited in another tab\./);
    await isSilent(second, "another tab edits");
    await second.page.close();
    await first.page.evaluate(() => {
      IDBObjectStore.prototype.put = () => {
        throw new DOMException("full", "QuotaExceededError");
      };
      (
        document.querySelector("mw-notebook") as unknown as { session: { put(fields: object, name: string): void } }
      ).session.put({ title: "no room" }, "Called no room");
    });
    await first.until(/this device is full/);
    await isSilent(first, "a full device");
    await first.page.close();
  });
});
