import type { Page } from "puppeteer-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { demoBrowser, type DemoBrowser } from "./browser.js";

// A reader with a thumb: from the count in the sentence to the order, without a keyboard.

let demo: DemoBrowser;

beforeAll(async () => {
  demo = await demoBrowser();
});

afterAll(() => demo?.close());

/** Taps what a selector finds inside an element; answers with the size of what was tapped. */
async function tap(page: Page, host: string, inside: string): Promise<number> {
  const place = () =>
    page.evaluate(
      (outer, inner) => {
        const target = document.querySelector(outer)!.shadowRoot!.querySelector(inner)!;
        target.scrollIntoView({ block: "center" });
        const { x, y, width, height } = target.getBoundingClientRect();
        return { x: x + width / 2, y: y + height / 2, size: Math.min(width, height) };
      },
      host,
      inside,
    );
  await place();
  const { x, y, size } = await place();
  await page.touchscreen.tap(x, y);
  await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => setTimeout(done, 50))));
  return size;
}

/** What an element shows, on one line: what is drawn, or the author's own text while that is right. */
const shown = (page: Page, selector: string, inside = ".root"): Promise<string> =>
  page.evaluate(
    (outer, inner) =>
      (
        [...document.querySelector(outer)!.shadowRoot!.querySelectorAll<HTMLElement>(inner)]
          .map(({ innerText }) => innerText)
          .join("\n") || document.querySelector<HTMLElement>(outer)!.innerText
      ).replace(/\s+/g, " "),
    selector,
    inside,
  );

test("finds the pair that fits, sees why others do not, and gets the order, by touch at 375 px", async () => {
  const phone = { width: 375, height: 740, deviceScaleFactor: 2, isMobile: true, hasTouch: true };
  const { page, said } = await demo.open("", phone);
  const sizes: number[] = [];
  const press = async (host: string, inside: string, times = 1) => {
    for (let n = 0; n < times; n++) sizes.push(await tap(page, host, inside));
  };
  const verdict = () => shown(page, 'mw-value[figure="fit"]:not([at])', "span");
  expect(await verdict()).toBe("fits");

  // The page has one strip, with keys for the count in hand.
  const more = ".strip .hand button:last-of-type";
  await press('mw-teeth[of="primary.driver"]', "input");
  await press("mw-edits", more, 2);
  await press('mw-teeth[of="primary.driven"]', "input");
  await press("mw-edits", more, 4);
  expect(await verdict()).toBe("too far apart");
  expect(await shown(page, "mw-train-drawing")).toContain("1.9 mm short");
  const order = await shown(page, "mw-order-list");
  expect(order).toContain("Together €16.60");
  expect(order).toContain("Fit, Spur and pinion: too far apart.");

  const misses = await shown(page, "mw-pair-finder", "tbody.miss");
  expect(misses).toMatch(/17 → 66 .* €16\.60 in the build .* Needs 33\.2 mm .* 1\.9 mm short/);
  // 32 DP is not module 0.8: such a pair is never near.
  expect(misses).not.toContain("32 DP");

  await press("mw-pair-finder", "tbody.hit button");
  expect(await verdict()).toBe("fits");
  expect(await shown(page, "mw-pair-finder", "tbody.hit")).toMatch(/^15 → 62 .* in the build/);
  expect(await shown(page, "mw-order-list")).toContain("Nothing to buy.");

  expect(Math.min(...sizes)).toBeGreaterThanOrEqual(24);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(375);
  expect(said).toEqual([]);
});
