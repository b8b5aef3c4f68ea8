import { readFileSync } from "node:fs";
import { parse } from "parse5";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { buildFromAttributes } from "../../packages/calc/src/document/index.js";
import { evaluate } from "../../packages/calc/src/evaluate/index.js";
import { attributesOf, elementsIn, textOf } from "../demo/page.js";
import { Hands, notebookBrowser, pressOn } from "./page.js";

// From an empty notebook to a published post, with a drivetrain of this test's own: Dunnock, a tidal-flat hauler. Motor gears 16
// to 58, a box printed 3.4, then two axles, 11 to 37 and 12 to 40.

const axeSource = readFileSync(new URL("../../node_modules/axe-core/axe.min.js", import.meta.url), "utf8");
const exact = (box: number, driver: number, driven: number): number => ((58 / 16) * box * driven) / driver;

let close: () => Promise<void>;
let hands: Hands;

async function isAccessible(what: string): Promise<void> {
  const session = await hands.page.createCDPSession();
  await session.send("Runtime.evaluate", { expression: axeSource });
  const found = await hands.page.evaluate(async () => {
    const { axe } = globalThis as unknown as {
      axe: {
        run(root: Document, options: object): Promise<{ violations: { id: string; nodes: { target: unknown }[] }[] }>;
      };
    };
    const { violations } = await axe.run(document, { resultTypes: ["violations"] });
    return violations.map(({ id, nodes }) => `${id}: ${JSON.stringify(nodes.map(({ target }) => target))}`);
  });
  await session.detach();
  expect(found, what).toEqual([]);
  expect(await hands.signsHeard(), what).toEqual([]);
}

describe("the whole way", () => {
  beforeAll(async () => {
    const opened = await notebookBrowser();
    ({ close } = opened);
    hands = await Hands.open(opened.browser, opened.address);
  });
  afterAll(() => close());

  it("leads from the first page to first totals in ten actions of the notebook", async () => {
    await hands.press("Begin with your own drivetrain", "link");
    await hands.until(/What does the motor turn first\?/);
    await isAccessible("the empty notebook");
    const begun = hands.actions.length;
    await hands.fill("Teeth of the gear that drives", "16");
    await hands.fill("Teeth of the gear that is driven", "58");
    // 58 / 16 = 3.625, a half away from zero.
    await hands.until(/3\.63 so far\. What next\?/);
    await hands.press("Box with a number");
    await hands.fill("The number on the box", "3.4");
    await hands.until(/12\.14 to 12\.51 so far/);
    await hands.press("Front and rear");
    for (const count of ["11", "37", "12", "40"]) {
      hands.actions.push(`the next blank: ${count}`);
      await hands.page.waitForFunction(() => {
        let one = document.activeElement;
        while (one?.shadowRoot?.activeElement) one = one.shadowRoot.activeElement;
        return one instanceof HTMLInputElement && one.value === "";
      });
      await hands.page.keyboard.type(count);
      await hands.page.keyboard.press("Tab");
    }
    await hands.press("Then the wheels");
    const [low, high] = [exact(3.35, 11, 37), exact(3.45, 11, 37)];
    expect([low.toFixed(4), high.toFixed(4)]).toEqual(["40.8472", "42.0665"]);
    await hands.until(/Front 40\.84 to 42\.07, rear 40\.47 to 41\.69/);
    expect(hands.actions.length - begun, hands.actions.join("\n")).toBeLessThanOrEqual(10);
    await isAccessible("first totals");
  });

  it("takes a sheet of parts as it is, asks in place, and loses no row", async () => {
    await hands.press("Paste a parts list");
    const sheet = [
      "Part;Teeth;Mod;Price;I have",
      "Pinion 16, steel;16;0,8;4,20 EUR;1",
      "Pinion 17, steel;17;0,8;4,20 EUR;",
      "Spur 58;58;0,8;8,90 EUR;1",
      "Spur 60;~60;0,8;9,10 EUR;",
    ].join("\n");
    const area = await hands.find("textbox", "The sheet, as it is, with its heads");
    hands.actions.push("paste the sheet");
    await area.evaluate((one, text) => {
      (one as HTMLTextAreaElement).value = text;
      one.dispatchEvent(new Event("input", { bubbles: true }));
    }, sheet);
    const asked = await hands.until(/4 parts, 1 question/);
    expect(asked).toContain("“~60” is no plain whole number");
    await isAccessible("a sheet that is read");
    await hands.press("Put 4 parts on the shelf");
    await hands.until(/4 parts lie on the shelf/);
  });

  it("finds gears that fit, and takes a pair", async () => {
    await hands.press("Gears: 16 drives 58");
    await hands.fill("Module", "0.8");
    await hands.choose("How the motor is held", "in a slot");
    await hands.fill("Slot from", "29");
    await hands.fill("Slot to", "31");
    // 0.8 · (16 + 58) / 2 = 29.6 mm
    await hands.until(/They need 29\.6 mm between centres\.\s*The mount sets 29(\.0)? mm to 31(\.0)? mm: fits/);
    await hands.fill("Fewest motor turns", "38");
    await hands.fill("Most motor turns", "41");
    await hands.until(/17 → 58/);
    await isAccessible("a stage that is chosen");
    // One key for the unit of length, whatever is shown on the page.
    await hands.press("Lengths in inches");
    // 29.6 / 25.4
    await hands.until(/They need 1\.165 in between centres\./);
    const units = await hands.page.evaluate(() => {
      const walk = (root: ParentNode): number =>
        [...root.querySelectorAll("*")].reduce(
          (sum, one) => sum + Number(one.matches("button.unit")) + (one.shadowRoot ? walk(one.shadowRoot) : 0),
          0,
        );
      return walk(document);
    });
    expect(units).toBe(1);
    await hands.press("Lengths in millimetres");
    await hands.press("Take it: 17 drives 58");
    await hands.until(/Front 38\.4\d to 39\.\d\d/);
    expect(await hands.text()).toContain("Undo:");
  });

  it("says what is to buy, and makes a card", async () => {
    const text = await hands.until(/To buy/);
    expect(text).toContain("Pinion 17, steel");
    expect(text).toMatch(/Before the first run/);
  });

  it("ties numbers of a post to the drivetrain, and publishes it", async () => {
    const post = await hands.find("textbox", "The post");
    hands.actions.push("write three sentences");
    await pressOn(post);
    const front = /Front (38\.\d\d to 39\.\d\d)/.exec(await hands.text())![1]!;
    await hands.page.keyboard.type(
      `Dunnock has 17 teeth on the motor. In front that makes ${front} motor turns. On 2026-10-03 it cost €17.`,
    );
    await hands.press("Go through them.");
    await isAccessible("a number that matches");
    for (let n = 0; n < 6; n++) {
      const choice = await hands.page.$('::-p-aria([role="radio"])');
      if (!choice) break;
      hands.actions.push("choose what it is");
      await pressOn(choice);
      await hands.press("Tie it to the drivetrain");
      await new Promise((done) => setTimeout(done, 150));
    }
    await hands.press("Yes");
    await hands.press("a block editor");
    await hands.until(/What to paste/);
    const html = await hands.page.evaluate(() => {
      const notebook = document.querySelector("mw-notebook")!.shadowRoot!;
      return notebook.querySelector("mw-notebook-post")!.shadowRoot!.querySelector<HTMLTextAreaElement>("#out")!.value;
    });
    await isAccessible("a post that is published");
    const all = elementsIn(html);
    const { build, findings } = buildFromAttributes(attributesOf(all.find(({ tagName }) => tagName === "mw-build")!));
    expect(findings).toEqual([]);
    const bounds = evaluate(build!).output("front")!.bounds!;
    expect(bounds.low.toNumber()).toBeCloseTo((58 / 17) * 3.35 * (37 / 11), 9);
    expect(bounds.high.toNumber()).toBeCloseTo((58 / 17) * 3.45 * (37 / 11), 9);
    expect(textOf(parse(html))).toBe(
      `Dunnock has 17 teeth on the motor. In front that makes ${front} motor turns. On 2026-10-03 it cost €17.`,
    );
    expect(all.filter(({ tagName }) => tagName === "mw-teeth").map((one) => textOf(one))).toEqual(["17"]);
    expect(hands.actions.length, hands.actions.join("\n")).toBeLessThanOrEqual(45);
  });

  it("comes back as it was after a reload, and said nothing to the console", async () => {
    await hands.until(/Saved in this browser only/);
    await hands.page.reload({ waitUntil: "networkidle0" });
    await hands.until(/Front 38\.4\d to 39\.\d\d.*Dunnock has/);
    expect(hands.said).toEqual([]);
    expect(hands.actions.length, hands.actions.join("\n")).toBeGreaterThan(20);
  });
});
