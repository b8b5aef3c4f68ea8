// The three engines: where they are on this machine, and how to bring them to a Debian one.
import { accessSync, constants, existsSync, readdirSync } from "node:fs";
import { delimiter, join } from "node:path";
import { run } from "./run.js";

const isExecutable = (path) => {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
};

/** The first of these commands that this machine has. */
function which(...names) {
  const folders = (process.env.PATH ?? "").split(delimiter);
  return names.flatMap((name) => folders.map((folder) => join(folder, name))).find(isExecutable);
}

/** The window that WebKitWebDriver opens lies outside the search path, in a folder named after the library's version. */
function findMiniBrowser() {
  for (const library of ["/usr/lib", "/usr/libexec", "/usr/lib64"]) {
    if (!existsSync(library)) continue;
    const folders = [library, ...readdirSync(library).map((name) => join(library, name))];
    for (const folder of folders) {
      for (const version of ["webkit2gtk-4.1", "webkitgtk-6.0", "webkit2gtk-4.0"]) {
        const path = join(folder, version, "MiniBrowser");
        if (isExecutable(path)) return path;
      }
    }
  }
  return undefined;
}

/** Paths of what is there; what is not is undefined. */
export const findBrowsers = () => ({
  chromium: which("chromium", "chromium-browser", "google-chrome", "google-chrome-stable"),
  firefox: which("firefox-esr", "firefox"),
  webKitDriver: which("WebKitWebDriver"),
  miniBrowser: findMiniBrowser(),
  xvfb: which("Xvfb"),
});

const needs = {
  chromium: ["chromium"],
  firefox: ["firefox"],
  webkit: ["webKitDriver", "miniBrowser", "xvfb"],
};
export const allEngines = Object.keys(needs);

const debianPackages = {
  chromium: "chromium",
  firefox: "firefox-esr",
  webKitDriver: "webkit2gtk-driver",
  miniBrowser: "webkit2gtk-driver",
  xvfb: "xvfb",
};

/** What an engine needs and this machine has not. */
function missingFor(engine) {
  const found = findBrowsers();
  return needs[engine].filter((name) => found[name] === undefined);
}

const hasEngine = (engine) => missingFor(engine).length === 0;

/** Installs missing engines where that is ours to do: on Debian, as root. Resolves to those still missing. */
export async function bringEngines(engines = allEngines) {
  const packages = new Set(engines.flatMap(missingFor).map((name) => debianPackages[name]));
  const isDebianRoot = existsSync("/etc/debian_version") && process.getuid?.() === 0 && which("apt-get");
  if (packages.size > 0 && isDebianRoot) {
    process.stderr.write(`Installing ${[...packages].join(", ")}\n`);
    const env = { DEBIAN_FRONTEND: "noninteractive" };
    const update = await run("apt-get", ["update", "-qq"], { env });
    const { code, output } = await run("apt-get", ["install", "-y", "-qq", "--no-install-recommends", ...packages], {
      env,
    });
    if (code !== 0) process.stderr.write(`${update.output}${output}`.split("\n").slice(-20).join("\n"));
  }
  return engines.filter((engine) => !hasEngine(engine));
}
