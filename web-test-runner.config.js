// Element tests in a real browser: ENGINE is chromium, firefox or webkit (whose driver scripts/engines.js starts).
import { fileURLToPath } from "node:url";
import { esbuildPlugin } from "@web/dev-server-esbuild";
import { defaultReporter } from "@web/test-runner";
import { chromeLauncher } from "@web/test-runner-chrome";
import { webdriverLauncher } from "@web/test-runner-webdriver";
import { findBrowsers } from "./scripts/lib/browsers.js";

const found = findBrowsers();

const launchers = {
  chromium: () =>
    chromeLauncher({
      launchOptions: {
        executablePath: found.chromium,
        args: ["--no-sandbox", "--disable-gpu", "--disable-quic", "--disable-background-networking"],
      },
    }),
  firefox: () => chromeLauncher({ launchOptions: { browser: "firefox", executablePath: found.firefox } }),
  webkit: () =>
    webdriverLauncher({
      hostname: "127.0.0.1",
      port: Number(process.env.WEBKIT_DRIVER_PORT),
      path: "/",
      logLevel: "error",
      capabilities: {
        browserName: "MiniBrowser",
        "wdio:enforceWebDriverClassic": true,
        "webkitgtk:browserOptions": { binary: found.miniBrowser, args: ["--automation"] },
      },
    }),
};

const engine = process.env.ENGINE ?? "chromium";
/** Of what is tried in parts, because all of it takes hours, which one: "3/12". */
const part = process.env.PART;

/** Counts for scripts/engines.js; what failed is told by the runner itself. */
const totals = {
  stop({ sessions }) {
    let passed = 0;
    let failed = 0;
    const count = (suite) => {
      for (const test of suite.tests) {
        if (test.passed) passed += 1;
        else failed += 1; // a test that was skipped did not pass
      }
      suite.suites.forEach(count);
    };
    for (const { testResults, errors } of sessions) {
      if (testResults) count(testResults);
      // A file that could not be loaded holds no tests, and must not look like one without fault.
      if (!testResults || errors.length > 0) failed += 1;
    }
    process.stdout.write(`\n${engine}: ${passed} passed, ${failed} failed\n`);
  },
};

export default {
  rootDir: fileURLToPath(new URL(".", import.meta.url)),
  files: process.env.TESTS ?? "packages/*/src/**/*.test.ts",
  browsers: [launchers[engine]()],
  // One page at a time: a page behind another gets no frames and no focus.
  concurrency: 1,
  // What hangs is given up; a machine that does other work as well takes its time.
  browserStartTimeout: 120_000,
  testsStartTimeout: 60_000,
  testsFinishTimeout: part ? 3_600_000 : 600_000,
  ...(part && {
    testRunnerHtml: (framework) =>
      `<!doctype html><html><head><script>globalThis.part = ${JSON.stringify(part)}</script></head><body><script type="module" src="${framework}"></script></body></html>`,
  }),
  nodeResolve: { exportConditions: ["browser", "default"] },
  plugins: [
    esbuildPlugin({
      ts: true,
      json: false,
      target: "es2022",
      tsconfig: fileURLToPath(new URL("tsconfig.json", import.meta.url)),
    }),
  ],
  testFramework: { config: { ui: "bdd", timeout: "120000" } },
  reporters: [defaultReporter({ reportTestResults: true, reportTestProgress: false }), totals],
};
