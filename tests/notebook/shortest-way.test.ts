import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { Hands, notebookBrowser, pressOn } from "./page.js";

// The shortest way by the screen alone, from the first page that `npm start` shows: Curlew, a mudflat carrier, 14 to 60 into one
// axle. Every press, choice and field that is filled is an action.

let hands: Hands;
let close: () => Promise<void>;

/** All that was done, in its order. */
const list = [
  "press Begin with your own drivetrain",
  "Teeth of the gear that drives: 14",
  "Teeth of the gear that is driven: 60",
  // First total: 4.29 so far.
  "press Then the wheels",
  "press Gears: 14 drives 60",
  "Module: 0.8",
  "How the motor is held: in a slot",
  "Slot from: 29",
  "Slot to: 31",
  "Fewest motor turns: 4.6",
  "Most motor turns: 4.8",
  "press Take it: 13 drives 61",
  // First fitting pair.
  "write a sentence",
  "Put in a figure: motor turns for one wheel turn",
  "press Yes",
  "press a block editor",
  "press Copy the post",
];

const most = { total: 10, pair: 25, snippet: 45 };

describe("the shortest way", () => {
  beforeAll(async () => {
    const opened = await notebookBrowser();
    ({ close } = opened);
    hands = await Hands.open(opened.browser, opened.address);
  });
  afterAll(() => close());

  it("leads to a first total", async () => {
    await hands.press("Begin with your own drivetrain", "link");
    await hands.fill("Teeth of the gear that drives", "14");
    await hands.fill("Teeth of the gear that is driven", "60");
    // 60 / 14
    await hands.until(/4\.29 so far/);
    expect(hands.actions.length).toBeLessThanOrEqual(most.total);
  });

  it("leads to a first pair that fits", async () => {
    await hands.press("Then the wheels");
    await hands.press("Gears: 14 drives 60");
    await hands.fill("Module", "0.8");
    await hands.choose("How the motor is held", "in a slot");
    await hands.fill("Slot from", "29");
    await hands.fill("Slot to", "31");
    await hands.fill("Fewest motor turns", "4.6");
    await hands.fill("Most motor turns", "4.8");
    // Without a list any counts are looked through. 61 / 13 = 4.692, and 0.8 · 74 / 2 = 29.6 mm between centres.
    await hands.press("Take it: 13 drives 61");
    await hands.until(/4\.69, inside 4\.6 to 4\.8/);
    await hands.until(/They need 29\.6 mm between centres\.\s*The mount sets 29(\.0)? mm to 31(\.0)? mm: fits/);
    expect(hands.actions.length).toBeLessThanOrEqual(most.pair);
  });

  it("leads to a published snippet, and is as it is listed", async () => {
    const post = await hands.find("textbox", "The post");
    hands.actions.push("write a sentence");
    await pressOn(post);
    await hands.page.keyboard.type("Curlew turns its motor this often for a wheel: ");
    await hands.choose("Put in a figure", "motor turns for one wheel turn");
    await hands.press("Yes");
    await hands.press("a block editor");
    await hands.page.evaluate(() => {
      const clipboard = { writeText: async (text: string) => void Object.assign(globalThis, { copied: text }) };
      Object.defineProperty(navigator, "clipboard", { value: clipboard, configurable: true });
    });
    await hands.press("Copy the post");
    await hands.until(/Copied\./);
    const copied = await hands.page.evaluate(() => (globalThis as unknown as { copied: string }).copied);
    expect(copied).toMatch(/^<mw-build [^>]*stages="Gears: 13 to 61/);
    expect(copied).toMatch(/for a wheel: <mw-value of="[\w-]+">4\.69<\/mw-value>/);
    expect(hands.actions).toEqual(list);
    expect(hands.actions.length).toBeLessThanOrEqual(most.snippet);
    expect(hands.said).toEqual([]);
  });
});
