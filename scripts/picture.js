// npm run picture: takes the README's picture anew, demo/picture.webp: a living sentence and the line of drive, as a page shows them.
import { readFileSync, statSync } from "node:fs";
import puppeteer from "puppeteer-core";
import { build } from "./build.js";
import { findBrowsers } from "./lib/browsers.js";
import { isMain } from "./lib/main.js";
import { at, shown } from "./lib/paths.js";

const target = at("demo", "picture.webp");

/** One page with nothing else on it, in the article's own paper and ink. */
const page = (build, script) => `<!doctype html><html lang="en"><style>
body { margin: 0; padding: 22px 26px; width: 1048px; background: #fbfaf6; color: #1c2430; font: 18px/1.5 Georgia, "DejaVu Serif", serif;
  --mw-accent: #0b5c6b; --mw-second: #55606b; --mw-fault: #9c2f1b; }
p { margin: 0 0 18px; }
</style><mw-build><script type="application/json">${build}</script></mw-build>
<p>With <mw-teeth of="primary.driver">15</mw-teeth> teeth on the motor, Limpet’s front wheels turn once for
<mw-value of="front">44.30</mw-value> turns of it, and roll <mw-value figure="farther">1.06% farther</mw-value> than the rear ones.</p>
<mw-drive-line></mw-drive-line><script>${script}</script></html>`;

async function picture() {
  if (!(await build(["calc", "elements"]))) return false;
  const { chromium } = findBrowsers();
  if (!chromium) throw new Error("Chromium is needed to take the picture.");
  const browser = await puppeteer.launch({ executablePath: chromium, args: ["--no-sandbox", "--disable-gpu"] });
  try {
    const window = await browser.newPage();
    await window.setViewport({ width: 1100, height: 700, deviceScaleFactor: 1 });
    const script = readFileSync(at("packages", "elements", "dist", "meshwright.js"), "utf8").replace(
      /<\/script/gi,
      "\\x3c/script",
    );
    await window.setContent(page(readFileSync(at("seeds", "limpet.json"), "utf8"), script));
    await window.evaluate(() => document.querySelector("mw-build").checked);
    await window.evaluate(() => document.querySelector("mw-teeth").focus());
    await window.keyboard.press("ArrowUp");
    await window.evaluate(() => document.activeElement.blur());
    await window.evaluate(() => new Promise((done) => setTimeout(done, 2500)));
    const { height } = await (await window.$("body")).boundingBox();
    await window.screenshot({
      path: target,
      type: "webp",
      quality: 72,
      clip: { x: 0, y: 0, width: 1100, height: Math.ceil(height) },
    });
  } finally {
    await browser.close();
  }
  process.stdout.write(`${shown(target)}: ${statSync(target).size} bytes\n`);
  return true;
}

if (isMain(import.meta)) process.exitCode = (await picture()) ? 0 : 1;
