import { build } from "esbuild";
import { afterAll, beforeAll, expect, test } from "vitest";
import { demoBrowser, folder, type DemoBrowser } from "./browser.js";

// What goes to the workshop on paper.

let demo: DemoBrowser;

beforeAll(async () => {
  demo = await demoBrowser();
});

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
    // With two lines to spare: the date is longer on another day, and letters are wider on another machine.
    for (const [name, width, height] of [
      ["A5", "148mm", "203mm"],
      ["A4", "210mm", "290mm"],
    ] as const)
      expect(pagesOf(await page.pdf({ width, height })), name).toBe(1);
    await page.close();
  },
  60_000,
);

// Between margins of a centimetre.
test.each([
  ["A5", 484],
  ["A4", 718],
  ["letter", 740],
])(
  "nothing of any element is cut, or lost, on %s",
  async (_, width) => {
    const { outputFiles } = await build({
      entryPoints: [folder("packages/elements/src/test/pictures/measured.ts")],
      ...{ bundle: true, write: false, format: "iife", globalName: "measured" },
    });
    const { page } = await demo.open("", { width: 1280, height: 900 });
    await page.evaluate(`${outputFiles[0]!.text}; globalThis.faultsIn = measured.faultsIn`);
    await page.evaluate(() => {
      const more: Record<string, string> = {
        "count-finder": 'of="primary.driver" figure="reduction" want="40"',
        "turn-count": 'of="primary"',
        "pair-finder": 'of="primary"',
      };
      const names =
        "ratio-summary overdrive-gauge stage-editor train-drawing drive-line working change-table order-list parts-list wheel-speed bench-card pair-finder count-finder train-finder unmarked-gear turn-count measurements";
      const sheet = document.createElement("div");
      sheet.id = "sheet";
      sheet.innerHTML = names
        .split(" ")
        .map((name) => `<mw-${name} ${more[name] ?? ""}></mw-${name}>`)
        .join("");
      document.body.style.cssText = "margin: 0; padding: 0; max-width: none; display: block";
      document.body.replaceChildren(document.querySelector("mw-build")!, sheet);
      (document.querySelector("mw-build") as Element & { store: { change(changes: object): void } }).store.change({
        "primary.driver": 17,
      });
    });
    await page.waitForFunction(
      () => document.querySelector("mw-pair-finder")!.shadowRoot!.querySelectorAll("tbody").length > 2,
    );
    await page.emulateMediaType("print");
    const faults = await page.evaluate(async (room) => {
      const texts = (selector: string) =>
        [...document.querySelectorAll("#sheet > *")].flatMap((element) =>
          [...element.shadowRoot!.querySelectorAll<HTMLElement>(selector)]
            .filter((cell) => cell.innerText.trim() && cell.getClientRects().length)
            .map((cell) => cell.innerText.replace(/\s+/g, " ").trim()),
        );
      const cells = texts("td, th");
      const sheet = document.querySelector<HTMLElement>("#sheet")!;
      // As a browser prints: told of it, and laid out at another width without a frame in between.
      dispatchEvent(new Event("beforeprint"));
      for (let n = 0; n < 20; n++) await Promise.resolve();
      sheet.style.width = `${room}px`;
      const printed = texts(".root").join(" ");
      const { faultsIn } = globalThis as unknown as {
        faultsIn(element: Element, within: DOMRect): string[];
      };
      const found = [...sheet.children].flatMap((element) =>
        faultsIn(element, sheet.getBoundingClientRect()).map((fault) => `${element.localName}: ${fault}`),
      );
      const words = new Set(cells.flatMap((cell) => cell.split(" ")));
      const lost = [...words].filter((word) => /\d/.test(word) && !printed.includes(word));
      return [...found, ...lost.map((word) => `lost: ${word}`)];
    }, width);
    expect(faults).toEqual([]);
    await page.close();
  },
  60_000,
);
