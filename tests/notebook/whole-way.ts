import { parse } from "parse5";
import { expect } from "vitest";
import { buildFromAttributes } from "../../packages/calc/src/document/index.js";
import { evaluate } from "../../packages/calc/src/evaluate/index.js";
import { attributesOf, elementsIn, textOf } from "../demo/page.js";
import type { EngineHands } from "./engine-hands.js";

// The whole way with a drivetrain that is in no other test: Ruddy, a sandbank tractor. Motor gears 14 to 56, a box printed 2.9, then two
// axles, 13 to 39 and 12 to 40; pinions of 15 and 16 lie on the shelf.

/** Hundredths of a total, with a box in hundredths: whole numbers, rounded outward. */
const hundredths = (motor: number, box: number, driver: number, driven: number): [down: number, up: number] => {
  const [above, below] = [56n * BigInt(box) * BigInt(driven), BigInt(motor) * BigInt(driver)];
  const down = above / below;
  return [Number(down), Number(above % below ? down + 1n : down)];
};
const totals = (motor: number, driver: number, driven: number): string =>
  [hundredths(motor, 285, driver, driven)[0], hundredths(motor, 295, driver, driven)[1]]
    .map((one) => (one / 100).toFixed(2))
    .join(" to ");
const pattern = (text: string): RegExp => new RegExp(text.replaceAll(".", "\\."));

const sheet = [
  "Gear;Teeth;Mod;Price;I have",
  "Pinion 15, hard;15;0,8;3,90 EUR;1",
  "Pinion 16, hard;16;0,8;3,90 EUR;",
  "Spur 56;56;0,8;7,40 EUR;1",
].join("\n");

/** From an empty notebook to first totals. */
export async function toFirstTotals(hands: EngineHands): Promise<void> {
  await hands.until(/What does the motor turn first\?/);
  await hands.fill("Teeth of the gear that drives", "14");
  // Whoever has typed presses what comes next, straight away: leaving the field is part of the press.
  await hands.write("Teeth of the gear that is driven", "56");
  await hands.until(/4\.00 so far\. What next\?/);
  await hands.press("Box with a number");
  await hands.write("The number on the box", "2.9");
  await hands.until(pattern(`${totals(14, 1, 1)} so far`));
  await hands.press("Front and rear");
  for (const count of ["13", "39", "12", "40"]) {
    await hands.seen("the next blank", () => {
      let one = document.activeElement;
      while (one?.shadowRoot?.activeElement) one = one.shadowRoot.activeElement;
      return one instanceof HTMLInputElement && one.value === "";
    });
    await hands.page.type(count);
    if (count !== "40") await hands.page.press("Tab");
  }
  await hands.press("Then the wheels");
  await hands.until(pattern(`Front ${totals(14, 13, 39)}, rear ${totals(14, 12, 40)}`));
}

/** On to a pair that fits and can be had, the order and the card. */
export async function toOrderAndCard(hands: EngineHands): Promise<void> {
  await hands.press("Paste a parts list");
  await hands.paste("The sheet, as it is, with its heads", sheet);
  await hands.press("Put 3 parts on the shelf");
  await hands.until(/3 parts lie on the shelf/);
  await hands.press("Gears: 14 drives 56");
  await hands.write("Module", "0.8");
  await hands.choose("How the motor is held", "in a slot");
  await hands.fill("Slot from", "27.5");
  await hands.fill("Slot to", "29");
  // 0.8 · (14 + 56) / 2 = 28 mm
  await hands.until(/They need 28(\.0)? mm between centres\./);
  // 56 / 15 · 2.9 · 3 = 32.5 and · 10 / 3 = 36.1
  await hands.fill("Fewest motor turns", "31");
  await hands.fill("Most motor turns", "37.5");
  await hands.press("Take it: 15 drives 56");
  await hands.until(pattern(`Front ${totals(15, 13, 39)}`));
  // What lies further down is drawn in its turn: nothing to buy for a pinion and a spur that are owned.
  const text = await hands.until(/Every part of it, by stage.*Before the first run/);
  const [, order] = /in whole pieces\.(.*)Every part of it, by stage/.exec(text)!;
  expect(order).not.toContain("Pinion 16, hard");
}

/** In the page: whether it asks about a number of the post. */
function isAskedAbout(number: string): boolean {
  const part = document.querySelector("mw-notebook")!.shadowRoot!.querySelector("mw-notebook-post")!;
  return part.shadowRoot!.querySelector(".match mark")?.textContent === number;
}

/** In the page: what is to be pasted. */
function handedOut(): string | undefined {
  const part = document.querySelector("mw-notebook")!.shadowRoot!.querySelector("mw-notebook-post")!;
  return part.shadowRoot!.querySelector<HTMLTextAreaElement>("#out")?.value;
}

/** Writes the post, ties its numbers, and hands it out for a block editor. */
export async function toPost(hands: EngineHands): Promise<string> {
  const front = totals(15, 13, 39);
  const written = `Ruddy has 15 teeth on the motor. In front that makes ${front} motor turns. It was built on 2026-09-15 for €15.`;
  await hands.reach("textbox", "The post");
  await hands.page.type(written);
  await hands.press("Go through them.");
  for (const number of ["15", front]) {
    await hands.seen(`the question about ${number}`, isAskedAbout, number);
    await hands.press(null, "radio");
    await hands.press("Tie it to the drivetrain");
  }
  await hands.press("Yes");
  await hands.press("a block editor");
  const html = await hands.seen("what is handed out", handedOut);
  const all = elementsIn(html);
  const { build, findings } = buildFromAttributes(attributesOf(all.find(({ tagName }) => tagName === "mw-build")!));
  expect(findings).toEqual([]);
  const bounds = evaluate(build!).output("front")!.bounds!;
  expect(bounds.low.toNumber()).toBeCloseTo((56 / 15) * 2.85 * 3, 9);
  expect(bounds.high.toNumber()).toBeCloseTo((56 / 15) * 2.95 * 3, 9);
  expect(textOf(parse(html))).toBe(written);
  expect(all.filter(({ tagName }) => tagName === "mw-teeth").map((one) => textOf(one))).toEqual(["15"]);
  return html;
}

/** A year later: only the post is left, and becomes a notebook; a count changes, and it is handed out again with its figures. */
export async function aYearLater(hands: EngineHands, address: string, html: string): Promise<void> {
  await hands.page.go(`${address}notebook/?new`);
  await hands.until(/What does the motor turn first\?/);
  await hands.drop("post.html", html);
  await hands.until(/Ruddy has 15 teeth on the motor\./);
  await hands.reach("spinbutton", "Gears: driver, teeth");
  await hands.page.press("ArrowUp");
  await hands.until(pattern(`Ruddy has 16 teeth on the motor. In front that makes ${totals(16, 13, 39)} motor turns.`));
  await hands.press("Yes");
  await hands.press("a block editor");
  const again = await hands.seen("what is handed out", handedOut);
  // Every other byte as it was.
  const mended = html
    .replace(/Gears: 15 to 56/, "Gears: 16 to 56")
    .replace(">15</mw-teeth>", ">16</mw-teeth>")
    .replace(totals(15, 13, 39), totals(16, 13, 39));
  const sealed = (text: string): string => text.replace(/ seal="[^"]*"/, "");
  expect(sealed(again)).toBe(sealed(mended));
}
