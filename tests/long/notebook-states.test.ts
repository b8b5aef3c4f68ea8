import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser } from "puppeteer-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { linkOfBuild } from "../../packages/calc/src/document/index.js";
import type { Build } from "../../packages/calc/src/drivetrain/index.js";
import { fileText, handedOut, openText, Session, type Notebook } from "../../packages/notebook/src/model/index.js";
import { Hands, notebookBrowser, pressOn } from "../notebook/page.js";

// Every state of the page as other ears and hands meet it: axe is silent in each, on a desk and on a phone, and finds the colours far
// enough apart by day and by night.

const axe = readFileSync(new URL("../../node_modules/axe-core/axe.min.js", import.meta.url), "utf8");
const folder = mkdtempSync(join(tmpdir(), "notebook-states-"));
let browser: Browser;
let address: string;
let close: () => Promise<void>;

/** Somebody who does things on the page by what they are called, wherever they stand, and has each state looked at. */
class Looker extends Hands {
  readonly found: string[] = [];

  static override async open(browserOf: Browser, at: string, width = 1280): Promise<Looker> {
    const page = await browserOf.newPage();
    await page.setViewport({ width, height: 900 });
    const looker = new Looker(page);
    await page.goto(at, { waitUntil: "networkidle0" });
    return looker;
  }

  async #violations(rules?: readonly string[]): Promise<readonly string[]> {
    const session = await this.page.createCDPSession();
    await session.send("Runtime.evaluate", { expression: `globalThis.axe ?? (() => {${axe}})()` });
    await session.detach();
    return this.page.evaluate(async (only) => {
      const { axe: tool } = globalThis as unknown as {
        axe: {
          run(root: Document, options: object): Promise<{ violations: { id: string; nodes: { target: unknown }[] }[] }>;
        };
      };
      const options = { resultTypes: ["violations"], ...(only && { runOnly: only }) };
      const { violations } = await tool.run(document, options);
      return violations.map(({ id, nodes }) => `${id}: ${JSON.stringify(nodes.map(({ target }) => target))}`);
    }, rules);
  }

  /** Looks at a state: by day all of it, by night what light changes. */
  async look(what: string): Promise<void> {
    const scheme = (value: string) => this.page.emulateMediaFeatures([{ name: "prefers-color-scheme", value }]);
    this.found.push(...(await this.#violations()).map((one) => `${what}: ${one}`));
    await scheme("dark");
    this.found.push(...(await this.#violations(["color-contrast"])).map((one) => `${what}, by night: ${one}`));
    await scheme("light");
  }

  /** Presses what is called so, or begins so. */
  async does(name: string): Promise<void> {
    await this.#once(
      `something to press that is called ${name}`,
      (wanted: string) => {
        const all: HTMLElement[] = [];
        const wordsOf = (one: Element): string =>
          (one.getAttribute("aria-label") ?? one.textContent ?? "").replace(/\s+/g, " ").trim();
        const walk = (root: ParentNode): void => {
          for (const one of root.querySelectorAll<HTMLElement>("*")) {
            if (/^(BUTTON|SUMMARY|A)$/.test(one.tagName) && one.offsetParent) all.push(one);
            if (one.shadowRoot) walk(one.shadowRoot);
          }
        };
        walk(document.querySelector("mw-notebook")!.shadowRoot!);
        const found = all.find((one) => wordsOf(one) === wanted) ?? all.find((one) => wordsOf(one).startsWith(wanted));
        found?.click();
        return !!found;
      },
      name,
    );
  }

  /** Fills the field, or chooses in the list, that is called so. */
  async says(name: string, text: string): Promise<void> {
    await this.#once(
      `a field that is called ${name}`,
      (wanted: string, value: string) => {
        const walk = (root: ParentNode): HTMLInputElement | undefined => {
          for (const one of root.querySelectorAll<HTMLInputElement>("input, select, textarea, *")) {
            const words = one.getAttribute("aria-label") ?? one.labels?.[0]?.textContent?.trim();
            if (/^(INPUT|SELECT|TEXTAREA)$/.test(one.tagName) && words === wanted) return one;
            const inside = one.shadowRoot && walk(one.shadowRoot);
            if (inside) return inside;
          }
          return undefined;
        };
        const field = walk(document.querySelector("mw-notebook")!.shadowRoot!);
        if (!field) return false;
        field.focus();
        const option = [...((field as unknown as HTMLSelectElement).options ?? [])].find((one) => one.text === value);
        field.value = option?.value ?? value;
        for (const type of ["input", "change"])
          field.dispatchEvent(new Event(type, { bubbles: true, composed: type === "input" }));
        return true;
      },
      name,
      text,
    );
  }

  async #once(what: string, act: (...values: string[]) => boolean, ...values: string[]): Promise<void> {
    for (let n = 0; n < 200; n++) {
      if (await this.page.evaluate(act, ...values)) return;
      await new Promise((done) => setTimeout(done, 50));
    }
    throw new Error(`There never was ${what}: ${(await this.text()).slice(0, 3000)}`);
  }

  async file(path: string): Promise<void> {
    const [chooser] = await Promise.all([this.page.waitForFileChooser(), this.does("Open a file")]);
    await chooser.accept([path]);
  }

  /** Nothing was found in any state, and the console heard nothing. */
  async isSilent(): Promise<void> {
    expect(this.found).toEqual([]);
    expect(this.said).toEqual([]);
    await this.page.close();
  }
}

const written = (name: string, text: string | Uint8Array): string => {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
};

const opened = openText(readFileSync(new URL("../../seeds/limpet.json", import.meta.url), "utf8"), "limpet-here");
if (opened.kind !== "notebook") throw new Error("no notebook");
const base: Notebook = { ...opened.notebook, ...handedOut(opened.notebook, "the file", "2026-10-01T10:00:00.000Z") };
const fileWith = (name: string, change: Record<string, number>): string => {
  const session = new Session({ ...base, title: name });
  session.change(change);
  return written(`${name}.json`, fileText(session.notebook));
};

beforeAll(async () => {
  ({ browser, address, close } = await notebookBrowser());
});
afterAll(async () => {
  await close();
  rmSync(folder, { recursive: true, force: true });
});

describe.each([
  ["on a desk", 1280],
  ["on a phone", 375],
])("every state of the notebook %s", (_, width) => {
  const at = (path: string): Promise<Looker> => Looker.open(browser, `${address}notebook/${path}`, width);

  it("while it is begun", async () => {
    const looker = await at("?new");
    await looker.until(/What does the motor turn first\?/);
    await looker.look("empty");
    for (const kind of ["Box with a number", "Belt or chain", "Unknown box"]) {
      await looker.does(kind);
      await looker.look(kind);
    }
    await looker.does("Two gears I counted");
    await looker.says("Teeth of the gear that drives", "1x");
    await looker.until(/hole teeth only/);
    await looker.look("no whole count");
    await looker.says("Teeth of the gear that drives", "14");
    await looker.says("Teeth of the gear that is driven", "60");
    await looker.until(/4\.29 so far\. What next\?/);
    await looker.look("what next");
    await looker.does("Three axles");
    await looker.look("three axles");
    await looker.does("Then the wheels");
    await looker.until(/The whole drivetrain/);
    await looker.look("begun");
    await looker.does("Gears: 14 drives 60");
    // A fifth less and more than 60 / 14.
    await looker.does("a fifth either way from what it is now");
    await looker.until(/inside 3\.4 to 5\.2/);
    await looker.look("any counts that fit");
    await looker.isSilent();
  });

  it("of the drivetrain", async () => {
    const looker = await at("?open=example");
    await looker.until(/Saved in this browser only/);
    await looker.until(/Before the first run/);
    await looker.look("the example");
    for (const [choose, sign] of [
      ["Motor", /It makes .* turns a minute for each volt/],
      ["Where it splits", /Where the drive splits/],
      ["Front", /Take this axle off/],
      ["The whole", /The whole drivetrain/],
    ] as const) {
      await looker.does(choose);
      await looker.until(sign);
      await looker.look(choose);
    }
    await looker.does("The working, line by line");
    await looker.look("the working");
    await looker.says("What changed", "as it ran in autumn");
    await looker.does("Keep");
    await looker.says("Name of this way to build it", "as before");
    await looker.does("Keep this way");
    await looker.until(/Forget it/);
    await looker.look("ways and versions");
    await looker.does("Spur and pinion: 15 drives 62");
    await looker.until(/Gears that fit/);
    await looker.does("Everything else that can be said of it");
    await looker.look("a stage, all that can be said of it");
    await looker.says("Spur and pinion: driver", "16");
    await looker.until(/Swapped, or counted again\?/);
    await looker.look("swapped, or counted again");
    await looker.says("Spur and pinion: driver", "0");
    await looker.until(/Whole teeth only, from 1\. Kept 16\./);
    await looker.look("a count that is none");
    await looker.says("Module", "thick");
    await looker.look("a module that is none");
    for (const way of ["by a pair that is known to fit", "in a row of holes", "on a pivot", "in a slot"]) {
      await looker.says("How the motor is held", way);
      await looker.look(`held ${way}`);
    }
    await looker.says("Slot from", "10");
    await looker.says("Slot to", "11");
    await looker.until(/too (far|close)|Needs|short/);
    await looker.look("what does not fit");
    await looker.does("It is something else …");
    for (const kind of ["A row of gears", "Worm", "Planetary", "Lever with two speeds"]) {
      await looker.does(kind);
      await looker.look(`instead: ${kind}`);
    }
    await looker.says("Let something in", "right after the motor");
    await looker.until(/Another axle, called/);
    await looker.look("let something in");
    await looker.does("Front");
    await looker.does("Take this axle off");
    await looker.until(/Taken off, and whole/);
    await looker.look("an axle taken off");
    await looker.isSilent();
  });

  it("of the shelf", async () => {
    const looker = await at("?new");
    await looker.until(/What does the motor turn first\?/);
    await looker.does("Paste a parts list");
    await looker.until(/The sheet, as it is/);
    await looker.look("a place to paste");
    const sheet =
      "List of October\nPart;Teeth;Mod;Price;I have\nPinion 16;16;0,8;4,20 EUR;1\nSpur 60;~60;0,8;9,10;some\n;;;;";
    await looker.says("The sheet, as it is, with its heads", sheet);
    await looker.until(/question/);
    await looker.look("a sheet with questions");
    await looker.does("Put ");
    await looker.until(/on the shelf\./);
    await looker.says("Pinion 16: pieces that I have", "many");
    await looker.until(/Whole pieces only/);
    await looker.does("Put it on the shelf");
    await looker.until(/What is it called\?/);
    await looker.look("the shelf");
    await looker.says("Show those with", "nothing such");
    await looker.until(/0 found/);
    await looker.look("nothing found");
    await looker.isSilent();
  });

  it("of order and workshop", async () => {
    // Few enough counts for a code.
    const { parts: _, alternatives: _others, references: _words, revisions: _past, ...few } = base.build!;
    const looker = await at(`#build-${await linkOfBuild(few)}`);
    await looker.until(/Before the first run/);
    await looker.does("Note the turns");
    await looker.until(/Numbers above 0/);
    await looker.says("Motor turns", "40");
    await looker.says("Wheel turns, at least", "0.5");
    await looker.does("Note the turns");
    await looker.until(/disagrees by at least/);
    await looker.until(/Count Spur and pinion again/);
    await looker.says("Temperature of the motor", "51");
    await looker.does("Note the run");
    await looker.does("A box that nobody knows");
    await looker.says("Spur and pinion: centre distance as it was set", "31.1");
    await looker.until(/The code opens these counts and mounts/);
    await looker.until(/Copy a link with what was measured/);
    await looker.look("measured, with a code on the card");
    await looker.does("Copy a link with what was measured");
    await looker.look("a link with what was measured");
    await looker.isSilent();
  });

  it("of the post, with its pictures and all that is handed out", async () => {
    const looker = await at("?open=example");
    await looker.until(/Before the first run/);
    const post = await looker.find("textbox", "The post");
    await pressOn(post);
    await looker.page.keyboard.type("It makes 44.30 turns with 15 teeth.");
    await looker.until(/match(es)? your drivetrain/);
    await looker.look("numbers that match");
    await looker.does("Go through them.");
    await looker.until(/Tie it to the drivetrain/);
    await looker.look("a number that matches");
    const radio = await looker.page.waitForSelector("mw-notebook >>> .match input");
    await radio!.evaluate((one) => (one as HTMLInputElement).click());
    await looker.does("Tie it to the drivetrain");
    await looker.look("a post with a figure");
    await looker.until(/Pictures/);
    for (const file of ["Yes", "No"]) {
      await looker.does(file);
      const places = await looker.page.evaluate(() => {
        const part = document.querySelector("mw-notebook")!.shadowRoot!.querySelector("mw-notebook-post")!;
        const buttons = [...part.shadowRoot!.querySelectorAll<HTMLButtonElement>("button[aria-pressed]")];
        return buttons.map(({ textContent }) => textContent!.trim()).filter((text) => !/^(Yes|No)$/.test(text));
      });
      expect(places.length).toBeGreaterThan(4);
      // What is pasted differs from place to place in its text alone.
      for (const place of [
        places[0]!,
        "Markdown",
        ...(file === "No" ? ["a site that allows frames"] : ["a block editor"]),
      ]) {
        await looker.does(place);
        if (place.includes("frames")) await looker.until(/Look at it/);
        await looker.look(`handed out, ${file}: ${place}`);
      }
    }
    await looker.isSilent();
  });

  it("of two notebooks, and of files", async () => {
    const looker = await at("?new");
    await looker.until(/What does the motor turn first\?/);
    for (const panel of ["Save a file", "Notebooks"]) {
      await looker.does(panel);
      await looker.look(panel);
    }
    await looker.file(written("picture.json", Uint8Array.from([0x89, 0x50, 0x4e, 0x47, 1, 2, 3])));
    await looker.until(/a picture/);
    await looker.look("a file that is none");
    await looker.file(fileWith(`mine ${width}`, { "primary.driver": 16, "front-hub.driver": 14 }));
    await looker.until(/Front 44\.50/);
    await looker.does("Notebooks");
    await looker.file(fileWith(`friend's ${width}`, { "primary.driven": 60, "row.teeth.2": 44 }));
    await looker.until(/opened beside yours\./);
    await looker.look("opened beside");
    await looker.does("Compare and merge");
    await looker.until(/Make a third notebook of both/);
    await looker.look("what both changed");
    await looker.page.evaluate(() =>
      document.querySelector("mw-notebook")!.shadowRoot!.querySelector<HTMLInputElement>(".panel input")!.click(),
    );
    await looker.does("Make a third notebook of both");
    await looker.until(/both notebooks stay as they were\./);
    await looker.look("a third of both");
    await looker.isSilent();
  });

  it("where something is wrong", async () => {
    const carried = { ...base.build!, mounts: [{ stage: "primary", from: "10 mm", to: "11 mm" }] } as Build;
    const looker = await at(`#build-${await linkOfBuild(carried)}`);
    await looker.until(/Taken out of an article/);
    await looker.look("taken out of an article");
    const cut = await at(`#build-${(await linkOfBuild(carried)).slice(0, -9)}`);
    await cut.until(/cannot be read: it was cut off/);
    await cut.look("a link that was cut off");
    await cut.isSilent();

    await looker.until(/Saved in this browser only/);
    const second = await Looker.open(browser, looker.page.url(), width);
    await second.until(/Being edited in another tab\./);
    await second.look("another tab edits");
    await second.isSilent();

    await looker.does("Spur and pinion: 15 drives 62");
    const module = await looker.find("textbox", "Module");
    await pressOn(module, 3);
    await looker.page.keyboard.type("0.9");
    await looker.page.reload({ waitUntil: "networkidle0" });
    await looker.until(/Typed and not entered/);
    await looker.look("typed and not entered");

    await looker.page.evaluate(() => {
      IDBObjectStore.prototype.put = () => {
        throw new DOMException("full", "QuotaExceededError");
      };
      (
        document.querySelector("mw-notebook") as unknown as { session: { put(fields: object, name: string): void } }
      ).session.put({ title: "no room" }, "Called no room");
    });
    await looker.until(/this device is full/);
    await looker.look("a full device");
    await looker.isSilent();
  });

  it("where this browser keeps nothing, and where a stage cannot be read", async () => {
    const page = await browser.newPage();
    await page.setViewport({ width, height: 900 });
    await page.evaluateOnNewDocument(() => {
      Object.defineProperty(globalThis, "indexedDB", { value: undefined });
    });
    const looker = new Looker(page);
    await page.goto(`${address}notebook/?open=example`, { waitUntil: "networkidle0" });
    await looker.until(/keeps nothing for this page/);
    await looker.look("kept nowhere");
    await looker.does("Ring and pinion");
    await looker.does("Take it out");
    await looker.does("Undo: ");
    await looker.look("undone");
    await looker.isSilent();
  });
});
