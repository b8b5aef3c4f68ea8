// What a row has in hand: folders, servers and a browser of its own, all of which end with it.
import assert from "node:assert/strict";
import { spawn } from "node:child_process";
import { cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import puppeteer from "puppeteer-core";
import { findBrowsers } from "../../../scripts/lib/browsers.js";
import { at } from "../../../scripts/lib/paths.js";
import { run as runProgram } from "../../../scripts/lib/run.js";
import { listen, staticServer } from "../../../scripts/lib/server.js";

export const delay = (milliseconds) => new Promise((resolve) => setTimeout(resolve, milliseconds));

/** Asks again until something is true. */
export async function until(question, what, longest = 30_000) {
  const end = Date.now() + longest;
  for (;;) {
    const answer = await Promise.resolve(question()).catch(() => undefined);
    if (answer) return answer;
    if (Date.now() > end) throw new Error(`Never came: ${typeof what === "function" ? what() : what}`);
    await delay(100);
  }
}

/** A port that nobody listens on. */
export async function freePort() {
  const server = createServer();
  await new Promise((resolve) => server.listen(0, "127.0.0.1", resolve));
  const { port } = server.address();
  await new Promise((resolve) => server.close(resolve));
  return port;
}

const windowSize = { width: 1280, height: 1000 };
const pictureSize = { width: 1000, height: 640 };
/** Other people's marks, which are not ours to show. */
const logos =
  ".edit-post-fullscreen-mode-close, #dokuwiki__header .logo, #dokuwiki__site .license, #dokuwiki__footer, #p-logo, #footer-icons";

/** Every program that was started, by any row: none outlives the run. */
const children = new Set();
const folders = new Set();
const endAll = () => {
  for (const child of children) {
    try {
      process.kill(-child.pid, "SIGKILL");
    } catch {
      // It has ended by itself.
    }
  }
  for (const folder of folders) rmSync(folder, { recursive: true, force: true, maxRetries: 3 });
};
process.once("exit", endAll);
for (const signal of ["SIGINT", "SIGTERM", "SIGHUP"]) process.once(signal, () => process.exit(1));

/** Begins a row. `stop` ends all that it has begun. */
export async function begin(name) {
  const folder = mkdtempSync(join(tmpdir(), `systems-${name}-`));
  folders.add(folder);
  const endings = [];
  const steps = [];
  const outcomes = [];
  const pages = [];
  const pictured = new Set();
  let browser;
  const t = {
    name,
    folder: (...parts) => join(folder, ...parts),
    /** A step that an author takes, as the guide tells it. */
    step: (text) => void steps.push(text),
    /** What came of a place where the post is read. */
    found: (place, outcome) => void outcomes.push({ place, outcome }),
    steps,
    outcomes,
    /** Shows a window to the guide's readers, the first of its name. */
    async picture(page, what) {
      const file = at("reports", "systems", "pictures", `${name}-${what}.jpg`);
      if (pictured.has(what)) return;
      pictured.add(what);
      mkdirSync(dirname(file), { recursive: true });
      // As wide as fits a page of the guide, so that nothing is cut off, and with the figures in it.
      await page.setViewport(pictureSize);
      await page.evaluate((logos) => {
        document.querySelector("mw-teeth")?.scrollIntoView({ block: "center" });
        for (const one of document.querySelectorAll(logos)) one.style.visibility = "hidden";
      }, logos);
      await page.screenshot({ path: file, type: "jpeg", quality: 55 });
      await page.setViewport(windowSize);
    },
    write(path, text) {
      const file = join(folder, path);
      mkdirSync(dirname(file), { recursive: true });
      writeFileSync(file, text);
    },
    read: (path) => readFileSync(join(folder, path), "utf8"),
    /** Copies what an author installs into the site. */
    install: (from, to = "") => cpSync(at("dist", "integrations", from), join(folder, to), { recursive: true }),
    /** The same, by the path that a README names. */
    installFrom: (path, to = "") => cpSync(at(path), join(folder, to), { recursive: true }),
    copy: (from, to) => {
      // Debian's packages point into each other; what points into one that is not here is left out.
      cpSync(from, join(folder, to), { recursive: true, dereference: true, filter: (path) => existsSync(path) });
    },
    /** Runs a program to its end; a failure is one of the row's. */
    async run(command, args, options = {}) {
      const { code, output } = await runProgram(command, args, { cwd: folder, ...options });
      assert.equal(code, options.code ?? 0, `${command} ${args.join(" ").slice(0, 200)}\n${output.slice(-3000)}`);
      return output;
    },
    /** Starts a program that goes on until the row ends. */
    start(command, args, { env = {}, cwd = folder } = {}) {
      const child = spawn(command, args, {
        cwd,
        env: { ...process.env, ...env },
        detached: true,
        stdio: ["ignore", "pipe", "pipe"],
      });
      children.add(child);
      let output = "";
      for (const stream of [child.stdout, child.stderr])
        stream.setEncoding("utf8").on("data", (text) => (output = (output + text).slice(-20_000)));
      const ended = new Promise((resolve) => child.once("close", resolve));
      child.once("error", (error) => (output += error.message));
      const stop = async (signal = "SIGTERM") => {
        for (const one of [signal, "SIGKILL"]) {
          try {
            process.kill(-child.pid, one);
          } catch {
            break;
          }
          if (await Promise.race([ended.then(() => true), delay(8000)])) break;
        }
        children.delete(child);
      };
      endings.push(stop);
      return { child, stop, said: () => output };
    },
    /** Serves a folder, on a port of its own. */
    async serve(path) {
      const server = staticServer({ "/": join(folder, path) });
      const port = await listen(server, 0);
      endings.push(async () => {
        server.closeAllConnections();
        await new Promise((resolve) => server.close(resolve));
      });
      return `http://127.0.0.1:${port}`;
    },
    /** A window of the browser. Each has its own visitor where `own` is said. */
    async window({ own = false, scripts = true } = {}) {
      browser ??= await puppeteer.launch({
        executablePath: findBrowsers().chromium,
        headless: true,
        args: ["--no-sandbox", "--disable-gpu", "--disable-quic", "--disable-background-networking", "--no-first-run"],
        protocolTimeout: 600_000,
      });
      const context = own ? await browser.createBrowserContext() : browser;
      const page = await context.newPage();
      pages.push(page);
      await page.setViewport(windowSize);
      page.setDefaultTimeout(90_000);
      const wrong = [];
      page.on("pageerror", (error) => wrong.push(`error ${error.message}`));
      page.on("console", (message) => {
        if (["error", "warn"].includes(message.type()))
          wrong.push(`${message.type()} ${message.text()} ${message.location().url ?? ""}`);
      });
      page.on("requestfailed", (request) =>
        wrong.push(`not loaded ${request.url()} ${request.failure()?.errorText ?? ""}`),
      );
      if (!scripts) await page.setJavaScriptEnabled(false);
      else await page.evaluateOnNewDocument(readFileSync(at("tests", "hosts", "lib", "probe.js"), "utf8"));
      return { page, wrong };
    },
    /** Keeps what a window shows, for whoever looks for what went wrong. */
    async keep(page = pages.findLast((one) => !one.isClosed())) {
      if (!page || page.isClosed()) return;
      mkdirSync(at("reports", "systems"), { recursive: true });
      await page.screenshot({ path: at("reports", "systems", `${name}.png`) }).catch(() => undefined);
      const html = await page.content().catch((error) => String(error));
      writeFileSync(at("reports", "systems", `${name}.html`), html);
    },
    async stop() {
      await browser?.close().catch(() => undefined);
      for (const end of endings.reverse()) await end();
      rmSync(folder, { recursive: true, force: true });
      folders.delete(folder);
    },
  };
  return t;
}
