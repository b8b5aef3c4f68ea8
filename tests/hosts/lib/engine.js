// One window on a page in any of the three engines, with the few things that the rows need of it.
import puppeteer from "puppeteer-core";
import { findBrowsers } from "../../../scripts/lib/browsers.js";
import { startWebKit } from "../../../scripts/engines.js";

export const delay = (milliseconds) => new Promise((resolve) => setTimeout(resolve, milliseconds));

/** WebDriver's names of the keys that have no character. */
const webDriverKeys = {
  ArrowUp: "\uE013",
  ArrowDown: "\uE015",
  Tab: "\uE004",
  Enter: "\uE007",
  Escape: "\uE00C",
  Backspace: "\uE003",
};

/** "Shift+Tab" is Tab with Shift held. */
const shifted = (key) => (key.startsWith("Shift+") ? [true, key.slice(6)] : [false, key]);

// Pages replace what is built in: nothing is called here that they could have replaced.
const hasLoaded = (url) =>
  (location.href === url || `${location.protocol}//${location.host}${location.pathname}${location.search}` === url) &&
  document.readyState === "complete";

/** Chromium and Firefox, over what puppeteer speaks with each. */
async function puppeteerEngine(browserName, executablePath) {
  const browser = await puppeteer.launch({
    browser: browserName,
    executablePath,
    headless: true,
    args:
      browserName === "chrome"
        ? [
            ...["--no-sandbox", "--disable-gpu", "--disable-quic", "--disable-background-networking", "--no-first-run"],
            "--js-flags=--expose-gc",
          ]
        : [],
  });
  const shared = await browser.newPage();
  return {
    version: /[\d.]+/.exec(await browser.version())[0],
    /** Opens an address in the one window that all rows share, or in a window of its own. */
    async open(url, { width = 1024, height = 768, features, own = false, before, wait = "load" } = {}) {
      const page = own || features || before ? await browser.newPage() : shared;
      await page.setViewport({ width, height });
      if (features) await page.emulateMediaFeatures(features);
      await before?.(page);
      await page.goto(url, { waitUntil: wait });
      // The page is told to have loaded before Firefox has always left the one before it.
      if (wait === "load") await until(() => page.evaluate(hasLoaded, url.split("#")[0]), `${url} as a whole`, 60_000);
      return {
        /** The underlying page, where a row needs more than the others can. */
        page,
        url: () => page.url(),
        async go(to) {
          await page.goto(to, { waitUntil: "load" });
          // What was left before may answer for a moment longer.
          await until(() => page.evaluate(hasLoaded, to.split("#")[0]), `${to} as a whole`, 60_000);
        },
        back: () => page.evaluate(() => void history.back()).catch(() => undefined),
        run: (action, ...values) => page.evaluate(action, ...values),
        async press(key) {
          const [shift, plain] = shifted(key);
          if (shift) await page.keyboard.down("Shift");
          await page.keyboard.press(plain);
          if (shift) await page.keyboard.up("Shift");
        },
        type: (text) => page.keyboard.type(text),
        click: (x, y) => page.mouse.click(x, y),
        close: () => (page === shared ? Promise.resolve() : page.close()),
      };
    },
    stop: () => browser.close(),
  };
}

/** WebKit, over the WebDriver protocol. */
async function webKitEngine({ miniBrowser }) {
  const { port, stop } = await startWebKit();
  const call = async (method, path, body) => {
    const answer = await fetch(`http://127.0.0.1:${port}${path}`, {
      method,
      ...(body === undefined ? {} : { body: JSON.stringify(body), headers: { "content-type": "application/json" } }),
    });
    const { value } = await answer.json();
    if (!answer.ok) throw new Error(`${value.error}: ${value.message}`);
    return value;
  };
  const { sessionId, capabilities } = await call("POST", "/session", {
    capabilities: {
      alwaysMatch: {
        browserName: "MiniBrowser",
        "webkitgtk:browserOptions": { binary: miniBrowser, args: ["--automation"] },
      },
    },
  });
  const session = `/session/${sessionId}`;
  // A page may be slow because of what else the machine does; whoever runs the rows says how long is too long.
  await call("POST", `${session}/timeouts`, { script: 600_000, pageLoad: 600_000 });
  const actions = (type, list) => call("POST", `${session}/actions`, { actions: [{ type, id: type, actions: list }] });
  const run = (action, ...values) =>
    call("POST", `${session}/execute/async`, {
      script: `const done = arguments[arguments.length - 1]; const given = [...arguments].slice(0, -1);
        Promise.resolve().then(() => (${action})(...given)).then((value) => done({ value }), (error) => done({ error: String(error) }));`,
      args: values,
    }).then((answer) => {
      if (answer?.error) throw new Error(answer.error);
      return answer?.value ?? undefined;
    });
  const press = (value, held) =>
    actions("key", [
      ...(held ? [{ type: "keyDown", value: held }] : []),
      { type: "keyDown", value },
      { type: "keyUp", value },
      ...(held ? [{ type: "keyUp", value: held }] : []),
    ]);
  let size;
  return {
    version: capabilities.browserVersion,
    async open(url, { width = 1024, height = 768 } = {}) {
      if (size !== `${width} ${height}`) await call("POST", `${session}/window/rect`, { width, height });
      size = `${width} ${height}`;
      await call("POST", `${session}/url`, { url });
      // A driver that does not bear what a page has replaced cannot be asked.
      const isThere = () => run(hasLoaded, url.split("#")[0]).catch(() => true);
      await until(async () => (await isThere()) !== false, `${url} as a whole`, 60_000);
      return {
        url: () => call("GET", `${session}/url`),
        go: (to) => call("POST", `${session}/url`, { url: to }),
        back: () => call("POST", `${session}/back`, {}),
        run,
        press(key) {
          const [shift, plain] = shifted(key);
          return press(webDriverKeys[plain] ?? plain, shift ? "\uE008" : undefined);
        },
        async type(text) {
          for (const character of text) await press(character);
        },
        click: (x, y) =>
          actions("pointer", [
            { type: "pointerMove", duration: 0, x: Math.round(x), y: Math.round(y) },
            { type: "pointerDown", button: 0 },
            { type: "pointerUp", button: 0 },
          ]),
        close: () => Promise.resolve(),
      };
    },
    async stop() {
      // A page that hangs does not answer this either; the driver is ended all the same.
      await Promise.race([call("DELETE", session).catch(() => undefined), delay(5000)]);
      await stop();
    },
  };
}

/** Starts an engine by its name. */
export function startEngine(name) {
  const found = findBrowsers();
  if (name === "webkit") return webKitEngine(found);
  return puppeteerEngine(name === "chromium" ? "chrome" : "firefox", found[name]);
}

/** Asks again until something is true: pages settle when they do. */
export async function until(question, what = String(question), longest = 8000) {
  const end = Date.now() + longest;
  for (;;) {
    // In between two pages there is nobody to ask.
    const answer = await question().catch(() => undefined);
    if (answer) return answer;
    if (Date.now() > end) throw new Error(`Never came: ${what}`);
    await delay(40);
  }
}
