// What the packages say about themselves agrees with what they are.
import { existsSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { at, foldersIn } from "../../scripts/lib/paths.js";

interface Manifest {
  readonly name: string;
  readonly version: string;
  readonly license: string;
  readonly type: string;
  readonly engines: { readonly node: string };
  readonly files: readonly string[];
  readonly exports: Readonly<Record<string, string | { readonly types: string; readonly default: string }>>;
  readonly dependencies?: Readonly<Record<string, string>>;
}

const manifestAt = (...parts: string[]) => JSON.parse(readFileSync(at(...parts, "package.json"), "utf8")) as Manifest;
const root = manifestAt();
const names = foldersIn(at("packages")).filter((name) => existsSync(at("packages", name, "package.json")));

describe.each(names)("packages/%s", (name) => {
  const manifest = manifestAt("packages", name);

  it("shares version, licence and needs with the others", () => {
    const { version, license, type, engines } = root;
    expect(manifest).toMatchObject({ version, license, type, engines });
    expect(manifest.name).toBe(`@meshwright/${name}`);
  });

  it("pins what it depends on", () => {
    for (const [dependency, wanted] of Object.entries(manifest.dependencies ?? {})) {
      if (dependency.startsWith("@meshwright/")) expect(wanted).toBe(root.version);
      else expect(wanted).toMatch(/^\d+\.\d+\.\d+$/);
    }
  });

  it("offers files that have a source", () => {
    for (const [subpath, target] of Object.entries(manifest.exports ?? {})) {
      if (typeof target === "string") continue;
      const source = target.default.replace("./dist/", "src/").replace(/\.js$/, ".ts");
      if (source.includes("*")) continue;
      expect(existsSync(at("packages", name, source)), `${subpath}: ${source}`).toBe(true);
      expect(target.types).toBe(target.default.replace(/\.js$/, ".d.ts"));
    }
  });
});

it("the Schema of a build lies beside the arithmetic, as a file for editors", async () => {
  const { buildSchema } = await import("@meshwright/calc/document");
  const file = at("packages", "calc", manifestAt("packages", "calc").exports["./build.schema.json"] as string);
  expect(JSON.parse(readFileSync(file, "utf8"))).toEqual(buildSchema());
});

it("the elements know their own version", () => {
  const source = readFileSync(at("packages", "elements", "src", "shared", "element", "define.ts"), "utf8");
  expect(/version = "([^"]+)"/.exec(source)?.[1]).toBe(root.version);
});

describe("the lock file", () => {
  const { packages } = JSON.parse(readFileSync(at("package-lock.json"), "utf8")) as {
    packages: Readonly<Record<string, { version?: string; resolved?: string; link?: boolean; integrity?: string }>>;
  };
  const installed = Object.entries(packages).filter(([path]) => /(^|\/)node_modules\//.test(path));

  it("names no place to download from", () => {
    const places = installed.filter(([, { resolved, link }]) => resolved !== undefined && !link);
    expect(places).toEqual([]);
    expect(installed.filter(([, { version = "" }]) => /[:/]/.test(version))).toEqual([]);
    expect(readFileSync(at(".npmrc"), "utf8")).toMatch(/^omit-lockfile-registry-resolved=true$/m);
    expect(readFileSync(at(".npmrc"), "utf8")).not.toMatch(/registry\s*=|\/\//);
  });

  it("holds a hash of all that is downloaded", () => {
    const bare = installed.filter(([, { link, integrity }]) => !link && !/^sha512-/.test(integrity ?? ""));
    expect(bare.map(([path]) => path)).toEqual([]);
  });

  it("pins what the project itself asks for", () => {
    const asked = JSON.parse(readFileSync(at("package.json"), "utf8")) as { devDependencies: Record<string, string> };
    for (const [name, wanted] of Object.entries(asked.devDependencies))
      expect(wanted, name).toMatch(/^(npm:[\w@/-]+@)?\d+\.\d+\.\d+$/);
  });
});
