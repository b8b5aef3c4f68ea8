// Other people's software: where it is, what version, and how to bring what comes from Debian.
import { spawnSync } from "node:child_process";
import { existsSync, mkdirSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { build } from "esbuild";
import { at } from "../../../scripts/lib/paths.js";
import { run } from "../../../scripts/lib/run.js";

const folderOf = (name) =>
  [at("tests", "hosts", "node_modules", name), at("node_modules", name)].find((path) => existsSync(path));

/** A file out of a package, as text. */
export const fileOf = (name, path) => readFileSync(join(folderOf(name), path), "utf8");

/** A package's name and version, or a Debian program's. */
export function described(name) {
  const folder = folderOf(name);
  if (!folder) return `${name} ${programs[name].version()} (Debian)`;
  return `${name} ${JSON.parse(readFileSync(join(folder, "package.json"), "utf8")).version}`;
}

/** The file behind a package's command. */
export function commandPath(name, command) {
  const { bin } = JSON.parse(fileOf(name, "package.json"));
  return join(folderOf(name), typeof bin === "string" ? bin : bin[command]);
}

const made = new Map();

/** What takes a while to make and is the same in every engine is made once. `key` says what it is made from. */
export function once(key, make) {
  if (!made.has(key)) made.set(key, make());
  return made.get(key);
}

/** Code that imports packages, as one classic script for a page. */
export const bundled = (contents, options = {}) =>
  once(`script ${JSON.stringify(options)} ${contents}`, () => bundle(contents, options));

async function bundle(contents, options) {
  const { outputFiles } = await build({
    stdin: { contents, resolveDir: at("tests", "hosts"), loader: options.loader ?? "js" },
    bundle: true,
    write: false,
    format: "iife",
    minify: false,
    logLevel: "silent",
    // Packages as they are published, not the sources beside them that the project's own settings would find.
    tsconfigRaw: {},
    define: {
      "process.env.NODE_ENV": '"production"',
      __VUE_OPTIONS_API__: "true",
      __VUE_PROD_DEVTOOLS__: "false",
      __VUE_PROD_HYDRATION_MISMATCH_DETAILS__: "false",
    },
    conditions: ["browser"],
    ...options.build,
  });
  return outputFiles[0].text;
}

const onPath = (name) => (process.env.PATH ?? "").split(":").some((folder) => folder && existsSync(join(folder, name)));
const wordpress = at(".cache", "wordpress");
const filters = join(wordpress, "files", "usr", "share", "wordpress", "wp-includes");

/** The version of what was unpacked; nothing where it was not. */
function wordpressVersion() {
  const file = join(filters, "version.php");
  return existsSync(file) ? (/wp_version = '([^']+)'/.exec(readFileSync(file, "utf8"))?.[1] ?? "") : "";
}

/** The first text of a kind that a program says about itself; nothing where it is not on this machine. */
const said = (pattern, command, ...args) =>
  pattern.exec(spawnSync(command, args, { encoding: "utf8" }).stdout ?? "")?.[0] ?? "";

const programs = {
  "php-cli": { isHere: () => onPath("php"), version: () => said(/[\d.]+/, "php", "-r", "echo PHP_VERSION;") },
  hugo: { isHere: () => onPath("hugo"), version: () => said(/[\d.]+/, "hugo", "version") },
  wordpress: {
    isHere: () => existsSync(join(filters, "kses.php")),
    version: wordpressVersion,
  },
};

/** Whether this machine may be given programs: Debian, as root. */
export const mayBring = () => existsSync("/etc/debian_version") && process.getuid?.() === 0;

/** Brings the Debian programs that are missing, where that is ours to do; resolves to the names still missing. */
export async function bringPrograms() {
  const missing = () => Object.keys(programs).filter((name) => !programs[name].isHere());
  if (missing().length > 0 && mayBring()) {
    const env = { DEBIAN_FRONTEND: "noninteractive" };
    process.stderr.write(`Bringing ${missing().join(", ")}\n`);
    await run("apt-get", ["update", "-qq"], { env });
    const installed = missing().filter((name) => name !== "wordpress");
    if (installed.length > 0)
      await run("apt-get", ["install", "-y", "-qq", "--no-install-recommends", ...installed], { env });
    if (!programs.wordpress.isHere()) {
      mkdirSync(wordpress, { recursive: true });
      await run("apt-get", ["download", "-qq", "wordpress"], { env, cwd: wordpress });
      const archive = readdirSync(wordpress).find((name) => name.endsWith(".deb"));
      if (archive) await run("dpkg-deb", ["-x", join(wordpress, archive), join(wordpress, "files")]);
    }
  }
  return missing();
}

/** Runs a text through WordPress's own filters for posts, outside of a WordPress. */
export const throughWordPress = (text, filter) => once(`wordpress ${filter} ${text}`, () => runWordPress(text, filter));

async function runWordPress(text, filter) {
  const code = `
    error_reporting(0);
    define("ABSPATH", "${filters}/../"); define("WPINC", "wp-includes");
    require "${filters}/plugin.php"; require "${filters}/functions.php"; require "${filters}/compat.php"; require "${filters}/formatting.php"; require "${filters}/kses.php";
    require "${filters}/shortcodes.php"; foreach (["__", "_x"] as $name) if (!function_exists($name)) eval("function $name(\\$text) { return \\$text; }");
    echo ${filter}(base64_decode("${Buffer.from(text).toString("base64")}"));`;
  const { code: status, output } = await run("php", ["-d", "display_errors=0", "-r", code]);
  if (status !== 0) throw new Error(`php ended with ${status}: ${output.slice(0, 300)}`);
  return output;
}
