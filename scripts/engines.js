// npm run test:elements, npm run test:engines: the element tests in the engines that are named.
import { spawn } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { allEngines, bringEngines, findBrowsers } from "./lib/browsers.js";
import { countsIn, countsLine } from "./lib/counts.js";
import { bundledTests } from "./lib/element-tests.js";
import { isMain } from "./lib/main.js";
import { commandOf, runNode } from "./lib/run.js";

function freePort() {
  return new Promise((resolve, reject) => {
    const server = createServer().on("error", reject);
    server.listen(0, "127.0.0.1", () => {
      const { port } = server.address();
      server.close(() => resolve(port));
    });
  });
}

const delay = (milliseconds) => new Promise((resolve) => setTimeout(resolve, milliseconds));

/** Resolves once something answers at the port. */
async function answers(port, child) {
  for (let tries = 0; tries < 200 && child.exitCode === null; tries += 1) {
    const status = await fetch(`http://127.0.0.1:${port}/status`).catch(() => undefined);
    if (status !== undefined) return;
    await delay(50);
  }
  throw new Error("WebKitWebDriver does not answer.");
}

/** Ends a program that we started and waits for it to be gone. */
async function end(child) {
  if (child === undefined || child.exitCode !== null || child.signalCode !== null) return;
  const gone = new Promise((resolve) => child.once("close", resolve));
  child.kill("SIGTERM");
  await Promise.race([gone, delay(3000)]);
  if (child.exitCode === null && child.signalCode === null) child.kill("SIGKILL");
}

/** A screen that nobody sees, and the driver of WebKit on it. Resolves to its port and to what ends both. */
export async function startWebKit() {
  const { webKitDriver, xvfb } = findBrowsers();
  const home = mkdtempSync(join(tmpdir(), "meshwright-webkit-"));
  const screen = spawn(xvfb, ["-displayfd", "3", "-screen", "0", "1280x1024x24", "-nolisten", "tcp"], {
    stdio: ["ignore", "ignore", "ignore", "pipe"],
  });
  let driver;
  const stop = async () => {
    await end(driver);
    await end(screen);
    rmSync(home, { recursive: true, force: true });
  };
  try {
    const display = await new Promise((resolve, reject) => {
      screen.on("error", reject);
      screen.once("close", () => reject(new Error("Xvfb did not start.")));
      screen.stdio[3].setEncoding("utf8").once("data", (text) => resolve(text.trim()));
    });
    const port = await freePort();
    driver = spawn(webKitDriver, [`--port=${port}`], {
      stdio: "ignore",
      env: {
        ...process.env,
        DISPLAY: `:${display}`,
        HOME: home,
        XDG_RUNTIME_DIR: home,
        WEBKIT_DISABLE_SANDBOX_THIS_IS_DANGEROUS: "1",
        // Nobody looks, and the software that stands in for a graphics card has been seen to crash.
        WEBKIT_DISABLE_COMPOSITING_MODE: "1",
      },
    });
    await answers(port, driver);
    return { port, stop };
  } catch (error) {
    await stop();
    throw error;
  }
}

/**
 * Runs the element tests. Resolves to counts by engine: `{ chromium: { passed, failed } }`.
 * An engine that this machine has not is named; under CI it counts as a failure.
 */
export async function testElements(engines, { show = true } = {}) {
  const counts = {};
  const missing = await bringEngines(engines);
  for (const engine of missing) {
    process.stdout.write(`${engine}: not on this machine\n`);
    if (process.env.CI === "true") counts[engine] = { passed: 0, failed: 1 };
  }
  // What is asked for by name is served as it lies.
  const tests = process.env.TESTS ?? (await bundledTests());
  for (const engine of engines.filter((name) => !missing.includes(name))) {
    const webKit = engine === "webkit" ? await startWebKit() : undefined;
    try {
      const { code, output } = await runNode(commandOf("@web/test-runner", "web-test-runner"), [], {
        show,
        env: { ENGINE: engine, TESTS: tests, ...(webKit ? { WEBKIT_DRIVER_PORT: String(webKit.port) } : {}) },
      });
      counts[engine] = countsIn(output) ?? { passed: 0, failed: 1 };
      // The runner's own verdict counts as well (an error outside of tests, say), and so does a run that met no test.
      if ((code !== 0 || counts[engine].passed === 0) && counts[engine].failed === 0) counts[engine].failed = 1;
      if (!show && counts[engine].failed > 0) process.stdout.write(output);
    } finally {
      await webKit?.stop();
    }
  }
  return counts;
}

if (isMain(import.meta)) {
  const { build } = await import("./build.js");
  if (!(await build(["calc", "elements"]))) process.exit(1);
  const named = process.argv.slice(2).filter((name) => allEngines.includes(name));
  const counts = await testElements(named.length > 0 ? named : allEngines);
  let passed = 0;
  let failed = 0;
  for (const engine of Object.keys(counts)) {
    process.stdout.write(`${engine}: ${countsLine(counts[engine])}\n`);
    passed += counts[engine].passed;
    failed += counts[engine].failed;
  }
  process.stdout.write(`${countsLine({ passed, failed })}\n`);
  process.exitCode = failed === 0 ? 0 : 1;
}
