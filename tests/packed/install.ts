// The tarballs, and clean folders outside of the repository in which they are installed as a stranger would install them.
import { spawnSync } from "node:child_process";
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pack } from "../../scripts/lib/pack.js";
import { at } from "../../scripts/lib/paths.js";
import { run } from "../../scripts/lib/run.js";

export type Tarballs = Readonly<Record<string, string>>;

/** A folder of its own, and a way to be rid of it. */
export function cleanFolder(): { readonly folder: string; remove(): void } {
  const folder = mkdtempSync(join(tmpdir(), "meshwright-packed-"));
  return { folder, remove: () => rmSync(folder, { recursive: true, force: true }) };
}

/** Builds what is stale and packs it. */
export async function tarballsIn(folder: string): Promise<Tarballs> {
  // A process of its own: what is built for a test environment is another thing than what is published.
  const { NODE_ENV: _, ...env } = process.env;
  spawnSync(process.execPath, [at("scripts", "build.js"), "--if-stale"], { env, stdio: "inherit" });
  return pack(folder);
}

interface Wanted {
  /** What is copied into the folder first; its package.json names what else is installed. */
  readonly from?: string;
  /** The packages of ours; all where not said. */
  readonly packages?: readonly string[];
}

/** Installs tarballs in a folder, from a registry what they ask for. */
export async function install(folder: string, tarballs: Tarballs, { from, packages }: Wanted = {}): Promise<void> {
  if (from) cpSync(from, folder, { recursive: true });
  const file = join(folder, "package.json");
  const manifest = from
    ? (JSON.parse(readFileSync(file, "utf8")) as object)
    : { name: "stranger", version: "1.0.0", private: true, type: "module" };
  const ours = Object.fromEntries(
    (packages ?? Object.keys(tarballs)).map((name) => [`@meshwright/${name}`, `file:${tarballs[name]}`]),
  );
  const { dependencies = {} } = manifest as { dependencies?: object };
  writeFileSync(file, JSON.stringify({ ...manifest, dependencies: { ...dependencies, ...ours } }, null, 2));
  const quiet = ["--no-audit", "--no-fund", "--prefer-offline", "--loglevel=error"];
  const { code, output } = await run("npm", ["install", ...quiet], { cwd: folder });
  if (code !== 0) throw new Error(`npm install in ${folder}: ${output}`);
}

/** Runs a script in a folder with this same Node. */
export const nodeIn = (
  folder: string,
  ...parameters: readonly string[]
): Promise<{ readonly code: number; readonly output: string }> =>
  run(process.execPath, [...parameters], { cwd: folder, env: { NODE_ENV: "", NODE_OPTIONS: "" } });
