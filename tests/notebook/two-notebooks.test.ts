import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser } from "puppeteer-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { fileText, handedOut, openText, Session, type Notebook } from "../../packages/notebook/src/model/index.js";
import { Hands, notebookBrowser, pressOn } from "./page.js";

// A file that comes back from a friend, or from last year: beside the other, in its place, or both made one.

const folder = mkdtempSync(join(tmpdir(), "notebook-two-"));
let browser: Browser;
let address: string;
let close: () => Promise<void>;

const opened = openText(readFileSync(new URL("../../seeds/limpet.json", import.meta.url), "utf8"), "limpet-here");
if (opened.kind !== "notebook") throw new Error("no notebook");
const base: Notebook = { ...opened.notebook, ...handedOut(opened.notebook, "the file", "2026-10-01T10:00:00.000Z") };

/** A file of the notebook with a change. */
function fileWith(name: string, change: Record<string, number>): string {
  const session = new Session({ ...base, title: name });
  expect(session.change(change)).toEqual([]);
  const path = join(folder, `${name}.json`);
  writeFileSync(path, fileText(session.notebook));
  return path;
}

async function open(hands: Hands, path: string): Promise<void> {
  const [chooser] = await Promise.all([hands.page.waitForFileChooser(), hands.press("Open a file")]);
  await chooser.accept([path]);
}

describe("two notebooks", () => {
  beforeAll(async () => {
    ({ browser, address, close } = await notebookBrowser());
  });
  afterAll(async () => {
    await close();
    rmSync(folder, { recursive: true, force: true });
  });

  it("become a third: what one changed is taken over, what both changed is asked, both stay", async () => {
    const hands = await Hands.open(browser, `${address}notebook/?new`);
    await open(hands, fileWith("mine", { "primary.driver": 16, "front-hub.driver": 14 }));
    await hands.until(/Front 44\.50/);
    await hands.press("Notebooks");
    await open(hands, fileWith("friend's", { "primary.driven": 60, "row.teeth.2": 44 }));
    await hands.until(/friend's, opened beside yours\.\s*Motor turns for one wheel turn: “mine” Front 44\.50/);
    await hands.press("Compare and merge with “mine”");
    const asked = await hands.until(/Both come from the file “Limpet, a 1:8 beach-launch tractor” of 1 October 2026\./);
    expect(asked).toMatch(/Gear row: from “friend's”\s*Hub: from “mine”/);
    expect(asked).toMatch(/Spur and pinion\s*mine\s*16 → 62 \(“mine”\)\s*theirs\s*15 → 60 \(“friend's”\)/);
    await hands.press("Make a third notebook of both");
    // Nothing was chosen, so nothing is made.
    expect(await hands.text()).toContain("Both come from the file");
    const choice = await hands.page.waitForSelector('::-p-aria([name="15 → 60 (“friend\'s”)"][role="radio"])');
    await pressOn(choice);
    await hands.press("Make a third notebook of both");
    // 60 / 15 · 44 / 18 · 38 / 13 · 22 / 14
    expect(((60 / 15) * (44 / 18) * (38 / 13) * (22 / 14)).toFixed(2)).toBe("44.91");
    await hands.until(/both notebooks stay as they were\..*Front 44\.91/);
    await hands.press("Notebooks");
    const all = await hands.until(/Notebooks in this browser/);
    expect(all).toMatch(/mine/);
    expect(all).toMatch(/friend's/);
    await hands.page.close();
  });

  it("change places where that is asked for; the one that was there is set aside, and comes back", async () => {
    const hands = await Hands.open(browser, `${address}notebook/?new`);
    await open(hands, fileWith("this year", { "primary.driver": 17 }));
    await hands.until(/Saved in this browser only/);
    const here = hands.page.url();
    await hands.press("Notebooks");
    await open(hands, fileWith("last year", { "primary.driver": 14 }));
    await hands.press("Replace “this year” (yours is set aside)");
    // 62 / 14 · 45 / 18 · 38 / 13 · 22 / 15
    await hands.until(/Replaced\. What was here is set aside as “this year, before .*Front 47\.47/);
    expect(hands.page.url()).toBe(here);
    await hands.press("Notebooks");
    await hands.until(/Set aside from this one/);
    const listed = await hands.page.evaluate(() =>
      [...document.querySelector("mw-notebook")!.shadowRoot!.querySelectorAll(".panel li button")].map(
        ({ textContent }) => textContent!,
      ),
    );
    expect(listed).toContain("this year");
    expect(listed).not.toContain("last year");
    await hands.page.evaluate(() => {
      const root = document.querySelector("mw-notebook")!.shadowRoot!;
      [...root.querySelectorAll("button")]
        .find(({ textContent }) => textContent!.startsWith("this year, before"))!
        .click();
    });
    // 62 / 17 · …
    await hands.until(/Front 39\.09/);
    await hands.page.close();
  });

  it("what was typed and not entered comes back with the tab, with what was chosen, and is entered by one press", async () => {
    const hands = await Hands.open(browser, `${address}notebook/?open=example`);
    await hands.until(/Saved in this browser only/);
    const name = await hands.page.waitForSelector("mw-notebook >>> [data-name=primary]");
    await pressOn(name);
    const field = await hands.find("textbox", "Module");
    await pressOn(field, 3);
    await hands.page.keyboard.type("0.9");
    await hands.page.reload({ waitUntil: "networkidle0" });
    await hands.until(/Typed and not entered: “0\.9”, Module\./);
    expect(await hands.text()).not.toContain("Undo");
    await hands.press("Enter it");
    await hands.until(/Undo: Spur and pinion, module 0\.8, now 0\.9/);
    await hands.page.reload({ waitUntil: "networkidle0" });
    await hands.until(/Front 44\.30/);
    expect(await hands.text()).not.toContain("not entered");
    // What leaving a field has entered is not asked about either.
    await hands.fill("Module", "0.7");
    await hands.until(/Undo: Spur and pinion, module 0\.9, now 0\.7/);
    await hands.page.reload({ waitUntil: "networkidle0" });
    await hands.until(/Front 44\.30/);
    expect(await hands.text()).not.toContain("not entered");
    await hands.page.close();
  });

  it("stands again as it stood the evening before, by one press, and what was made of it since is in Undo", async () => {
    const hands = await Hands.open(browser, `${address}notebook/?new`);
    const count = (driver: number): Promise<void> =>
      hands.page.evaluate((to) => {
        const notebook = document.querySelector("mw-notebook") as unknown as { session: { change(set: object): void } };
        notebook.session.change({ "primary.driver": to });
      }, driver);
    await open(hands, fileWith("evenings", { "primary.driver": 17 }));
    // 62 / 17 · 45 / 18 · 38 / 13 · 22 / 15
    await hands.until(/Front 39\.09/);
    await count(16);
    await hands.until(/Front 41\.53/);
    const evening = new Date();
    // As text: nothing of what compiles this file is on the page.
    await hands.page.evaluateOnNewDocument(`{
      const { now } = Date;
      const ahead = () => now() + 86_400_000;
      globalThis.Date = class extends Date {
        constructor(...given) {
          super(...(given.length ? given : [ahead()]));
        }
      };
      Date.now = ahead;
    }`);
    await hands.page.reload({ waitUntil: "networkidle0" });
    await hands.until(/Front 41\.53/);
    await count(14);
    await hands.until(/Front 47\.47/);
    const day = evening.toLocaleDateString("en-GB", { day: "numeric", month: "long", year: "numeric" });
    await hands.press(`Put it back: as it stood on ${day}`);
    await hands.until(/Front 41\.53/);
    await hands.press(`Undo: Back to how it stood on ${day}`);
    await hands.until(/Front 47\.47/);
    await hands.page.close();
  });
});
