import jsQR from "jsqr";
import type { Browser } from "puppeteer-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { buildFromLink, linkOfBuild, parseBuild } from "../../packages/calc/src/document/index.js";
import { valueAt } from "../../packages/calc/src/drivetrain/index.js";
import { Hands, notebookBrowser, pressOn } from "./page.js";

// Its types speak of a module where its default is the function.
const readCode = jsQR as unknown as typeof jsQR.default;

// A drivetrain in an address: out of an article, onto a phone and back, into a frame.

let browser: Browser;
let address: string;
let close: () => Promise<void>;

const titleOf = async (hands: Hands): Promise<string> =>
  (await hands.find("textbox", "Name of this notebook")).evaluate((one) => (one as HTMLInputElement).value);

// Sandpiper: 13 to 52, then front 11 to 33 and rear 12 to 33.
const sandpiper = parseBuild({
  format: "meshwright-build/1",
  title: "Sandpiper",
  stages: [{ id: "gears", label: "Motor gears", kind: "pair", driver: 13, driven: 52, module: "0.8" }],
  outputs: [
    { id: "front", label: "Front", stages: [{ id: "front-ring", kind: "pair", driver: 11, driven: 33 }] },
    { id: "rear", label: "Rear", stages: [{ id: "rear-ring", kind: "pair", driver: 12, driven: 33 }] },
  ],
  compare: { of: "front", with: "rear" },
  mounts: [{ stage: "gears", from: "25 mm", to: "27 mm" }],
  rounding: { minimumFractionDigits: 2, maximumFractionDigits: 2 },
});

describe("a drivetrain in an address", () => {
  beforeAll(async () => {
    ({ browser, address, close } = await notebookBrowser());
  });
  afterAll(() => close());

  it("is taken out of the article as a reader has changed it, and is a notebook of their own then", async () => {
    const hands = await Hands.open(browser, address);
    await hands.page.evaluate(() => {
      const count = document.querySelector('mw-teeth[of="primary.driver"]')!;
      count.scrollIntoView();
      count.shadowRoot!.querySelector("input")!.focus();
    });
    await hands.page.keyboard.press("ArrowUp");
    await hands.press("Take it into a notebook", "link");
    // 62 / 16 · 45 / 18 · 38 / 13 · 22 / 15
    await hands.until(/Taken out of an article\. It is yours now.*Front 41\.53, rear 40\.62/);
    expect(new URL(hands.page.url()).hash).toMatch(/^#notebook-/);
    await hands.until(/Saved in this browser only/);
    await hands.page.reload({ waitUntil: "networkidle0" });
    await hands.until(/Front 41\.53, rear 40\.62/);
    expect(hands.said).toEqual([]);
  });

  it("says when the address was cut off on its way, and begins an empty notebook", async () => {
    const link = await linkOfBuild(sandpiper);
    const hands = await Hands.open(browser, `${address}notebook/#build-${link.slice(0, -9)}`);
    await hands.until(/The drivetrain in this link cannot be read: it was cut off or changed on its way\./);
    expect(await hands.text()).toContain("What does the motor turn first?");
  });

  it("goes onto a phone by the code on the card, and what is measured there comes back", async () => {
    const desk = await Hands.open(browser, `${address}notebook/#build-${await linkOfBuild(sandpiper)}`);
    await desk.until(/Front 12\.00, rear 11\.00/);
    await desk.until(/The code opens these counts and mounts/);
    const code = await desk.page.waitForSelector(
      "::-p-aria(A code for a phone: opens these counts and mounts in the notebook)",
    );
    await code!.evaluate((one) => one.scrollIntoView({ block: "center" }));
    const png = await code!.screenshot({ encoding: "base64" });
    const { data, width, height } = await desk.page.evaluate(async (source) => {
      const bitmap = await createImageBitmap(new Blob([Uint8Array.from(atob(source), (one) => one.charCodeAt(0))]));
      const canvas = new OffscreenCanvas(bitmap.width, bitmap.height);
      const context = canvas.getContext("2d")!;
      context.drawImage(bitmap, 0, 0);
      return { ...size(bitmap), data: [...context.getImageData(0, 0, bitmap.width, bitmap.height).data] };
      function size(one: ImageBitmap) {
        return { width: one.width, height: one.height };
      }
    }, png);
    const read = readCode(Uint8ClampedArray.from(data), width, height)?.data ?? "";
    expect(read.length).toBeLessThanOrEqual(1200);
    const reading = await buildFromLink(read.split("#build-")[1]!);
    expect(reading.ok && valueAt(reading.build, "gears.driver")).toBe(13);
    expect(reading.ok && reading.build.mounts?.[0]?.from).toBe("25 mm");

    const garage = await browser.createBrowserContext();
    const page = await garage.newPage();
    await page.setViewport({ width: 375, height: 800 });
    const phone = new Hands(page);
    await page.goto(read, { waitUntil: "networkidle0" });
    await phone.until(/Front 12\.00, rear 11\.00/);
    for (const [name, text] of [
      ["Motor turns", "36"],
      ["Wheel turns, at least", "2.95"],
      ["Wheel turns, at most", "3.05"],
    ] as const) {
      const field = await page.waitForSelector(`::-p-aria([name="${name}"][role="textbox"])`);
      await pressOn(field);
      await page.keyboard.type(text);
    }
    await page.keyboard.press("Enter");
    await phone.until(/2\.95 to 3\.05\s+agrees/);
    await phone.fill("Motor gears: centre distance as it was set", "26.1");
    const back = await page.evaluate(async () => {
      let copied = "";
      Object.defineProperty(navigator, "clipboard", {
        value: { writeText: async (text: string) => void (copied = text) },
      });
      const part = document.querySelector("mw-notebook")!.shadowRoot!.querySelector("mw-notebook-workshop")!;
      [...part.shadowRoot!.querySelectorAll("button")].find((one) => one.textContent!.includes("Copy a link"))!.click();
      while (!copied) await new Promise((done) => setTimeout(done, 20));
      return copied;
    });
    await garage.close();

    const title = await titleOf(desk);
    const home = await Hands.open(browser, back);
    await home.until(/This link brings 1 count by hand and 1 centre distance for this notebook\./);
    expect(await titleOf(home)).toBe(title);
    await home.press("Edit here instead").catch(() => undefined);
    await home.press("Take it in");
    await home.until(/2\.95 to 3\.05\s+agrees/);
    expect(
      await (
        await home.find("textbox", "Motor gears: centre distance as it was set")
      ).evaluate((one) => (one as HTMLInputElement).value),
    ).toBe("26.1 mm");
    await home.page.close();
    await desk.page.close();
  });

  it("stands in a frame whose height its line names, from 320 to 720 pixels, under a policy of its own", async () => {
    const hands = await Hands.open(browser, `${address}notebook/#build-${await linkOfBuild(sandpiper)}`);
    await hands.until(/Front 12\.00, rear 11\.00/);
    await hands.press("No");
    await hands.press("a site that allows frames");
    for (const [shown, name] of [
      ["totals, stage by stage", "ratio-summary"],
      ["front against rear", "overdrive-gauge"],
      ["the line of drive", undefined],
    ] as const) {
      await hands.choose("What the frame shows", shown);
      const source = await hands.page
        .waitForFunction(
          (wanted) => {
            const part = document.querySelector("mw-notebook")!.shadowRoot!.querySelector("mw-notebook-post")!;
            const text = part.shadowRoot!.querySelector<HTMLTextAreaElement>("#out")?.value ?? "";
            const named = new URL(/src="([^"]+)"/.exec(text)?.[1] ?? "about:blank").searchParams.get("show");
            return text && named === wanted ? text : undefined;
          },
          { polling: 50 },
          name ?? null,
        )
        .then((found) => found.jsonValue());
      const pattern = /^<iframe src="([^"]+)" title="Sandpiper" width="100%" height="(\d+)" loading="lazy"><\/iframe>$/;
      const [, framed = "", height = ""] = pattern.exec(source!) ?? [];
      expect(framed, shown).not.toBe("");
      for (const width of [320, 480, 720]) {
        const page = await browser.newPage();
        const said: string[] = [];
        page.on("console", (message) => said.push(message.text()));
        page.on("pageerror", (error) => said.push(String(error)));
        await page.setViewport({ width, height: Number(height) });
        await page.goto(framed, { waitUntil: "networkidle0" });
        await page.waitForSelector("mw-frame[data-drawn]");
        await page.waitForFunction(
          () => /12\.00|8\.33/.test(document.querySelector("mw-frame > *")?.shadowRoot?.textContent ?? ""),
          { polling: 50 },
        );
        const fits = await page.evaluate(() => {
          const { scrollHeight, scrollWidth, clientHeight, clientWidth } = document.documentElement;
          return { scrollHeight, scrollWidth, clientHeight, clientWidth };
        });
        expect(fits.scrollHeight, `${shown} at ${width}`).toBeLessThanOrEqual(Number(height));
        expect(fits.scrollWidth, `${shown} at ${width}`).toBeLessThanOrEqual(width);
        expect(said).toEqual([]);
        await page.close();
      }
    }
    await hands.page.close();
  });

  it("in a frame is the reader's to change and to bring back, and a slip in its address is told", async () => {
    const link = await linkOfBuild(sandpiper);
    const hands = await Hands.open(browser, `${address}notebook/embed.html?show=ratio-sumary,drive-line#${link}`, 720);
    await hands.until(/This page shows nothing called “ratio-sumary”; there is ratio-summary\./);
    await hands.until(/12\.00/);
    const count = await hands.find("spinbutton", "Motor gears: driver, teeth");
    await pressOn(count);
    await hands.page.keyboard.press("ArrowUp");
    // 52 / 14 · 3
    await hands.until(/11\.14/);
    expect(new URL(hands.page.url()).hash).toBe(`#${link}`);
    await hands.press("Back to the author’s numbers");
    await hands.until(/12\.00/);
    const other = await Hands.open(browser, `${address}notebook/embed.html#${link.slice(3)}`, 720);
    await other.until(/The drivetrain in this address cannot be read\./);
    await other.page.close();
    await hands.page.close();
  });
});
