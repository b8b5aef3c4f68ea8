import { afterAll, beforeAll, expect, test } from "vitest";
import { demoBrowser, type DemoBrowser } from "./browser.js";

// What goes to the workshop on paper.

let demo: DemoBrowser;

beforeAll(async () => {
  demo = await demoBrowser();
}, 120_000);

afterAll(() => demo?.close());

const pagesOf = (pdf: Uint8Array): number =>
  Buffer.from(pdf)
    .toString("latin1")
    .match(/\/Type\s*\/Page\b(?!s)/g)!.length;

test.each(["en", "de", "ar"])(
  "the bench card is one sheet of A5, and of A4, in %s",
  async (language) => {
    const { page } = await demo.open("", { width: 800, height: 900 });
    // A pair that does not fit has a line more.
    await page.evaluate((lang) => {
      const build = document.querySelector("mw-build")!;
      const sheet = document.querySelector("mw-bench-card")!.closest("details")!;
      document.documentElement.lang = lang;
      document.body.replaceChildren(build, sheet);
      (build as Element & { store: { change(changes: object): void } }).store.change({ "primary.driver": 17 });
    }, language);
    await page.evaluate(() => new Promise((done) => setTimeout(done, 300)));
    for (const format of ["A5", "A4"] as const) expect(pagesOf(await page.pdf({ format })), format).toBe(1);
    await page.close();
  },
  60_000,
);
