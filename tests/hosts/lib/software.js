// Other people's software: where it is, what version, and how to bring what comes from Debian.
import { existsSync, mkdirSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { build } from "esbuild";
import { at } from "../../../scripts/lib/paths.js";
import { run } from "../../../scripts/lib/run.js";

const folderOf = (name) =>
  [at("tests", "hosts", "node_modules", name), at("node_modules", name)].find((path) => existsSync(path));

/** A file out of a package, as text. */
export const fileOf = (name, path) => readFileSync(join(folderOf(name), path), "utf8");

/** A package's name and version, or a Debian program's name. */
export function described(name) {
  const folder = folderOf(name);
  if (!folder) return `${name} (Debian)`;
  return `${name} ${JSON.parse(readFileSync(join(folder, "package.json"), "utf8")).version}`;
}

/** The file behind a package's command. */
export function commandPath(name, command) {
  const { bin } = JSON.parse(fileOf(name, "package.json"));
  return join(folderOf(name), typeof bin === "string" ? bin : bin[command]);
}

/** Code that imports packages, as one classic script for a page. */
export async function bundled(contents, options = {}) {
  const { outputFiles } = await build({
    stdin: { contents, resolveDir: at("tests", "hosts"), loader: options.loader ?? "js" },
    bundle: true,
    write: false,
    format: "iife",
    minify: false,
    logLevel: "silent",
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

const programs = {
  "php-cli": () => onPath("php"),
  hugo: () => onPath("hugo"),
  wordpress: () => existsSync(join(filters, "kses.php")),
};

/** Whether this machine may be given programs: Debian, as root. */
export const mayBring = () => existsSync("/etc/debian_version") && process.getuid?.() === 0;

/** Brings the Debian programs that are missing, where that is ours to do; resolves to the names still missing. */
export async function bringPrograms() {
  const missing = () => Object.keys(programs).filter((name) => !programs[name]());
  if (missing().length > 0 && mayBring()) {
    const env = { DEBIAN_FRONTEND: "noninteractive" };
    process.stderr.write(`Bringing ${missing().join(", ")}\n`);
    await run("apt-get", ["update", "-qq"], { env });
    const installed = missing().filter((name) => name !== "wordpress");
    if (installed.length > 0)
      await run("apt-get", ["install", "-y", "-qq", "--no-install-recommends", ...installed], { env });
    if (!programs.wordpress()) {
      mkdirSync(wordpress, { recursive: true });
      await run("apt-get", ["download", "-qq", "wordpress"], { env, cwd: wordpress });
      const archive = readdirSync(wordpress).find((name) => name.endsWith(".deb"));
      if (archive) await run("dpkg-deb", ["-x", join(wordpress, archive), join(wordpress, "files")]);
    }
  }
  return missing();
}

/** Runs a text through WordPress's own filters for posts, outside of a WordPress. */
export async function throughWordPress(text, filter) {
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
