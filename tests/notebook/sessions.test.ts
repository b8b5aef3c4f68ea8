import type { Browser } from "puppeteer-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { Hands, notebookBrowser } from "./page.js";
import { session } from "./sessions.js";

let browser: Browser;
let address: string;
let close: () => Promise<void>;

describe("sessions by chance", () => {
  beforeAll(async () => {
    ({ browser, address, close } = await notebookBrowser());
  });
  afterAll(() => close());

  it.each(Array.from({ length: 6 }, (_, n) => n + 1))(
    "lose nothing that is 300 ms old, and double nothing: %i",
    (seed) => session(browser, address, seed, 8),
    120_000,
  );

  it("show at once what is in sight, what comes in sight, and what is written in; the rest when the hands rest", async () => {
    const hands = await Hands.open(browser, `${address}notebook/?open=example`);
    await hands.page.setViewport({ width: 1280, height: 420 });
    await hands.until(/Front 44\.30, rear 43\.32, inside 38 to 46/);
    await hands.until(/The range that you want/);
    // What stands right after an edit in the line, in what is opened below it, and in what that is drawn from.
    const edited = (driver: number, come: "" | "scroll" | "focus") =>
      hands.page.evaluate(
        async (driver, come) => {
          const frames = async () => {
            for (let n = 0; n < 3; n++) await new Promise((done) => requestAnimationFrame(done));
          };
          const within = (element: Element | null | undefined, selector: string) =>
            element?.shadowRoot?.querySelector<HTMLElement>(selector);
          const notebook = document.querySelector("mw-notebook") as HTMLElement & {
            session: { build: unknown; change(request: object): unknown };
          };
          const drivetrain = within(notebook, "mw-notebook-drivetrain");
          const line = within(within(drivetrain, "mw-notebook-line"), "mw-drive-line");
          const panel = within(drivetrain, "mw-notebook-whole") as HTMLElement & { store: { build: unknown } };
          const field = within(panel, "[data-address='target.from']")!;
          if (come === "focus") field.focus({ preventScroll: true });
          else (document.activeElement as HTMLElement).blur();
          scrollTo(0, 0);
          await frames();
          notebook.session.change({ "primary.driver": driver });
          if (come === "scroll") panel.scrollIntoView();
          await frames();
          const totals = (element: Element | null | undefined) =>
            [...(element?.shadowRoot?.textContent ?? "").matchAll(/\b\d\d\.\d\d\b/g)].map(([text]) => text);
          return {
            line: totals(line),
            panel: totals(within(panel, "mw-ratio-summary")),
            isOne: panel.store.build === notebook.session.build,
          };
        },
        driver,
        come,
      );
    // Motor turns for one wheel turn, with 15 teeth, by hand.
    const turns = (driver: number) => [44.30085, 43.32465].map((total) => ((total * 15) / driver).toFixed(2));
    for (const [driver, come] of [
      [16, "scroll"],
      [17, "focus"],
    ] as const) {
      const now = await edited(driver, come);
      expect(now.line).toEqual(expect.arrayContaining(turns(driver)));
      expect(now.panel).toEqual(expect.arrayContaining(turns(driver)));
      expect(now.isOne).toBe(true);
    }
    const waiting = await edited(18, "");
    expect(waiting.line).toEqual(expect.arrayContaining(turns(18)));
    await hands.page.waitForFunction(() => {
      const drivetrain = document.querySelector("mw-notebook")?.shadowRoot?.querySelector("mw-notebook-drivetrain");
      const whole = drivetrain?.shadowRoot?.querySelector("mw-notebook-whole");
      return whole?.shadowRoot?.querySelector("mw-ratio-summary")?.shadowRoot?.textContent?.includes("36.92");
    });
    expect(hands.said).toEqual([]);
    await hands.page.close();
  });
});
