// The packages as they would go to a registry: one tarball each.
import { mkdirSync, readFileSync, rmSync } from "node:fs";
import { join } from "node:path";
import { at, foldersIn } from "./paths.js";
import { run } from "./run.js";

/** The packages that are published. */
export const published = foldersIn(at("packages"));

/**
 * Packs every package into a folder, which is emptied before.
 * @param {string} folder
 * @returns {Promise<Record<string, string>>} the tarballs by the packages' names
 */
export async function pack(folder) {
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder, { recursive: true });
  const workspaces = published.flatMap((name) => ["--workspace", `@meshwright/${name}`]);
  const { code, output } = await run("npm", [
    "pack",
    "--ignore-scripts",
    "--pack-destination",
    folder,
    "--loglevel=error",
    ...workspaces,
  ]);
  if (code !== 0) throw new Error(`npm pack: ${output}`);
  return Object.fromEntries(
    published.map((name) => {
      const { version } = JSON.parse(readFileSync(at("packages", name, "package.json"), "utf8"));
      return [name, join(folder, `meshwright-${name}-${version}.tgz`)];
    }),
  );
}

/** What is wrong with a tarball, in lines: what its package.json promises, and how its types are found. */
export async function faultsOf(tarball) {
  const [{ publint }, { formatMessage }, attw] = await Promise.all([
    import("publint"),
    import("publint/utils"),
    import("@arethetypeswrong/core"),
  ]);
  const bytes = readFileSync(tarball);
  const { messages, pkg } = await publint({
    pack: { tarball: bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.length) },
    strict: true,
  });
  const told = messages.map((message) => formatMessage(message, pkg));
  const found = await attw.checkPackage(attw.createPackageFromTarballData(new Uint8Array(bytes)));
  // What is written for import alone has nothing to say to require.
  const isOurs = ({ resolutionKind }) => resolutionKind !== "node10" && resolutionKind !== "node16-cjs";
  const problems = (found.problems ?? [])
    .filter(isOurs)
    .map(
      (problem) => `${problem.kind}: ${problem.entrypoint ?? problem.fileName ?? ""} ${problem.resolutionKind ?? ""}`,
    );
  return [...told, ...(found.types ? problems : ["no types"])];
}
