// What the builder's notebook costs its page: 12 stages, 3 axles, 1,000 parts.
import { median } from "./figures-page.js";
import { at } from "./paths.js";
import { scriptBetween } from "./script-time.js";
import { listen, staticServer } from "./server.js";

const opens = 5;
const edits = 40;
const rests = 8;

const pair = (id, driver, driven) => ({ id, label: id, kind: "pair", driver, driven, module: "0.8" });

/** A vehicle of three axles with three stages each behind a gearbox of three, and a box full of gears. */
const vehicle = () => ({
  format: "meshwright-build/1",
  title: "Whimbrel",
  stages: [pair("primary", 15, 62), { id: "row", kind: "train", teeth: [18, 31, 45] }, pair("third", 20, 24)],
  outputs: ["front", "middle", "rear"].map((id, n) => ({
    id,
    label: id,
    stages: [pair(`${id}-ring`, 12 + n, 36 + n), pair(`${id}-drop`, 20, 22), pair(`${id}-hub`, 15, 22)],
    wheel: { diameter: "120 mm" },
    wheels: 2,
  })),
  compare: { of: "front", with: "rear" },
  target: { from: "60", to: "70" },
  mounts: [{ stage: "primary", from: "29 mm", to: "32 mm" }],
  motor: { kv: 1850 },
  battery: { cells: 3, chemistry: "lipo" },
  parts: Array.from({ length: 1000 }, (_, n) => ({
    id: `part-${n}`,
    name: `${n % 2 ? "Spur" : "Pinion"} ${n}`,
    is: n % 2 ? "spur" : "pinion",
    teeth: n % 2 ? 40 + (n % 47) : 10 + (n % 23),
    module: n % 3 ? "0.8" : "0.6",
    owned: n % 5 ? 0 : 1,
    price: { amount: String(3 + (n % 7)), currency: "EUR" },
    maker: "Barnacle Gears",
  })),
});

/**
 * Measures in one page, which is closed again: milliseconds of script for an edit and for opening; of an edit with paint, also
 * with all that is drawn out of sight once the hands rest (medians); and the longest time that the page was held.
 */
export async function notebookFigures(browser) {
  const server = staticServer({
    "/": at("demo"),
    "/notebook/script/": at("packages", "notebook", "dist"),
    "/seeds/": at("seeds"),
  });
  const address = `http://127.0.0.1:${await listen(server, 0)}/notebook/`;
  const page = await browser.newPage();
  const said = [];
  page.on("pageerror", (error) => said.push(String(error)));
  await page.setViewport({ width: 1280, height: 900 });
  const session = await page.createCDPSession();
  await session.send("Performance.enable", { timeDomain: "threadTicks" });
  // The browser's own count of script leaves out what runs in microtasks: this is everything but layout and styles, paint among it.
  const script = async () => {
    const { metrics } = await session.send("Performance.getMetrics");
    const of = (wanted) => metrics.find(({ name }) => name === wanted).value * 1000;
    return of("TaskDuration") - of("LayoutDuration") - of("RecalcStyleDuration");
  };
  const begun = () =>
    page.waitForFunction(
      () => {
        const notebook = document.querySelector("mw-notebook");
        const line = notebook?.shadowRoot.querySelector(".keeping")?.textContent ?? "";
        return notebook?.session?.build && /Saved in/.test(line);
      },
      { polling: 50 },
    );
  const watch = () =>
    page.evaluate(() => {
      globalThis.longest = 0;
      new PerformanceObserver((list) => {
        for (const { duration } of list.getEntries()) globalThis.longest = Math.max(globalThis.longest, duration);
      }).observe({ type: "longtask", buffered: true });
    });
  const later = (milliseconds) => new Promise((done) => setTimeout(done, milliseconds));
  let longest = 0;
  const held = async () => {
    longest = Math.max(longest, await page.evaluate(() => globalThis.longest));
  };
  try {
    await page.goto(`${address}?new`);
    await page.waitForFunction(() => document.querySelector("mw-notebook")?.shadowRoot?.querySelector(".keeping"));
    await later(500);
    await page.evaluate((build) => {
      const notebook = document.querySelector("mw-notebook");
      const file = new File([JSON.stringify(build)], "whimbrel.json", { type: "application/json" });
      const data = new DataTransfer();
      data.items.add(file);
      notebook.shadowRoot
        .querySelector(".book")
        .dispatchEvent(new DragEvent("drop", { dataTransfer: data, bubbles: true, cancelable: true }));
    }, vehicle());
    await begun();
    await page.evaluateOnNewDocument(() => performance.mark("open"));
    const open = async () => {
      await page.reload();
      await begun();
      await later(300);
    };
    const opened = [];
    for (let n = 0; n < opens; n++) opened.push(...(await scriptBetween(page, "open", open)));
    // What writes down the browser's tasks makes them longer: how long one holds the page is seen without.
    for (let n = 0; n < opens; n++) {
      await open();
      await watch();
      await later(50);
      await held();
    }
    const editing = async (times, pause) => {
      const edited = [];
      for (let n = 0; n < times; n++) {
        const before = await script();
        await page.evaluate(
          (driver) => {
            performance.mark("edit");
            document.querySelector("mw-notebook").session.change({ "primary.driver": driver });
          },
          15 + (n % 5),
        );
        await later(pause);
        edited.push((await script()) - before);
      }
      return edited;
    };
    const edited = await editing(edits, 250);
    const inScript = await scriptBetween(page, "edit", () => editing(edits, 250));
    await later(1500);
    const rested = await editing(rests, 1500);
    await held();
    if (said.length) throw new Error(said[0]);
    return {
      notebook_edit_ms: median(inScript),
      notebook_edit_painted_ms: median(edited),
      notebook_rest_ms: median(rested),
      notebook_open_ms: median(opened),
      notebook_longest_ms: longest,
    };
  } finally {
    await page.close();
    server.close();
    server.closeAllConnections();
  }
}
