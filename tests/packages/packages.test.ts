// What the packages say about themselves agrees with what they are.
import { createHash } from "node:crypto";
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { at, foldersIn } from "../../scripts/lib/paths.js";

interface Manifest {
  readonly name: string;
  readonly version: string;
  readonly license: string;
  readonly author: string;
  readonly homepage: string;
  readonly bugs: object;
  readonly repository: object;
  readonly keywords: readonly string[];
  readonly type: string;
  readonly engines: { readonly node: string };
  readonly files: readonly string[];
  readonly exports: Readonly<Record<string, string | { readonly types: string; readonly default?: string }>>;
  readonly dependencies?: Readonly<Record<string, string>>;
}

const manifestAt = (...parts: string[]) => JSON.parse(readFileSync(at(...parts, "package.json"), "utf8")) as Manifest;
const root = manifestAt();
const names = foldersIn(at("packages")).filter((name) => existsSync(at("packages", name, "package.json")));

describe.each(names)("packages/%s", (name) => {
  const manifest = manifestAt("packages", name);

  it("shares version, licence and needs with the others", () => {
    const { version, license, type, engines, author, bugs, homepage } = root;
    expect(manifest).toMatchObject({ version, license, type, engines, author, bugs, homepage });
    expect(manifest.name).toBe(`@meshwright/${name}`);
    expect(manifest.repository).toEqual({ ...root.repository, directory: `packages/${name}` });
    expect(manifest.keywords.length).toBeGreaterThan(3);
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
      const made = target.default ?? target.types;
      expect(target.types).toBe(made.replace(/(\.d\.ts|\.js)$/, ".d.ts"));
      // Types that are made from the manifest, and scripts that are made whole.
      if (!target.default || /\/(meshwright|notebook)[\w-]*\.js$/.test(made)) continue;
      const source = made.replace("./dist/", "src/").replace(/\.js$/, ".ts");
      if (source.includes("*")) continue;
      expect(existsSync(at("packages", name, source)), `${subpath}: ${source}`).toBe(true);
    }
  });
});

describe("the Schema of a build as a file for editors", () => {
  const file = at("packages", "calc", manifestAt("packages", "calc").exports["./build.schema.json"] as string);
  interface Schema {
    readonly description?: string;
    readonly examples?: readonly unknown[];
    readonly properties?: Readonly<Record<string, Schema>>;
    readonly $defs?: Readonly<Record<string, Schema>>;
  }
  const described = () => JSON.parse(readFileSync(file, "utf8")) as Schema;

  /** The same without what is only for people to read. */
  const bare = (value: unknown): unknown => {
    if (Array.isArray(value)) return value.map(bare);
    if (typeof value !== "object" || value === null) return value;
    const isSchema = !("properties" in value && !("type" in value));
    const entries = Object.entries(value).filter(
      ([key, one]) => !(isSchema && key === "description" && typeof one === "string"),
    );
    const kept = Object.fromEntries(
      entries.filter(([key]) => key !== "examples").map(([key, one]) => [key, bare(one)]),
    );
    return kept;
  };

  it("takes and refuses what the reader does", async () => {
    const { buildSchema } = await import("@meshwright/calc/document");
    // Anything at all is `true` there and an empty object here, where it can be described.
    const plain = (value: unknown) => JSON.stringify(bare(value)).replace(/"(to|\w+)":\{\}/g, '"$1":true');
    expect(plain(described())).toBe(plain(buildSchema()));
  });

  it("says of every field what it means", () => {
    const { $defs = {}, ...whole } = described();
    const objects = Object.entries({ build: whole as Schema, ...$defs }).filter(([, one]) => one.properties);
    const silent = objects.flatMap(([name, { properties = {} }]) =>
      Object.entries(properties)
        .filter(([field, one]) => !one.description && !(name === "stage" && field === "kind"))
        .map(([field]) => `${name}.${field}`),
    );
    expect(silent).toEqual([]);
    // In words of ours: what a compiler says of its own types is none.
    expect($defs.rounding?.description).toMatch(/^How a figure is rounded/);
    expect(JSON.stringify(described())).not.toContain("properties of T");
    expect(objects.flatMap(([, { properties = {} }]) => Object.keys(properties)).length).toBeGreaterThan(240);
  });
});

describe("the manifest of the elements", () => {
  interface Element {
    readonly tagName: string;
    readonly name: string;
    readonly description: string;
    readonly attributes: readonly {
      readonly name: string;
      readonly description: string;
      readonly type: { text: string };
    }[];
    readonly cssParts: readonly { readonly name: string; readonly description: string }[];
    readonly cssProperties: readonly { readonly name: string; readonly default?: string }[];
    readonly events: readonly { readonly name: string }[];
  }
  const folder = at("packages", "elements");
  const read = (name: string) => JSON.parse(readFileSync(join(folder, "dist", name), "utf8")) as unknown;
  const elements = (read("custom-elements.json") as { modules: { declarations: Element[] }[] }).modules.flatMap(
    ({ declarations }) => declarations,
  );

  it("describes every attribute of every element that the table has, and no other", async () => {
    const { axleNames, axleParts, buildWords, elementAttributes } = await import("@meshwright/calc/document");
    const notation = [
      ...buildWords,
      ...axleNames.flatMap((axle) => [axle, ...axleParts.map((part) => `${axle}-${part}`)]),
    ];
    const wanted = Object.fromEntries(
      Object.entries(elementAttributes).map(([tag, names]) => [
        tag,
        [...names, "build", ...(tag === "mw-build" ? notation : [])].sort(),
      ]),
    );
    expect(
      Object.fromEntries(
        elements.map(({ tagName, attributes }) => [tagName, attributes.map(({ name }) => name).sort()]),
      ),
    ).toEqual(wanted);
    for (const { tagName, description, attributes } of elements) {
      expect(description, tagName).toBeTruthy();
      for (const one of attributes) expect(one.description, `${tagName} ${one.name}`).toBeTruthy();
    }
  });

  it("names every part that an element draws, and no other", () => {
    for (const { tagName, cssParts } of elements) {
      const place = join(folder, "src", "elements", tagName.replace("mw-", ""));
      const code = readdirSync(place)
        .filter((name) => !name.endsWith(".test.ts"))
        .map((name) => readFileSync(join(place, name), "utf8"))
        .join("\n");
      const partsIn = (text: string) =>
        [...text.matchAll(/\bpart(?:="|", ")([^"$]+)"/g)].flatMap(([, names]) => names!.split(" "));
      // A tray is drawn by what comes with the second file.
      const tray = /\bTray\b/.test(code) ? partsIn(readFileSync(join(folder, "src", "second", "tray.ts"), "utf8")) : [];
      const drawn = [...partsIn(code), ...tray];
      expect(cssParts.map(({ name }) => name).sort(), tagName).toEqual([...new Set(drawn)].sort());
    }
  });

  it("knows the custom properties as the styles have them", () => {
    const styles = readFileSync(join(folder, "src", "shared", "element", "styles.ts"), "utf8");
    const mapped = [...styles.matchAll(/var\((--mw-[\w-]+), ((?:[^()]|\([^()]*\))+)\)/g)]
      .map(([, name]) => name!)
      .sort();
    for (const { tagName, cssProperties } of elements)
      expect(cssProperties.map(({ name }) => name).sort(), tagName).toEqual(mapped);
  });

  it("gives the closed words of an attribute to editors", async () => {
    const { figureSpecs, scopes } = await import("@meshwright/calc/report");
    const { tags } = read("html-data.json") as {
      tags: { name: string; attributes: { name: string; values?: { name: string }[] }[] }[];
    };
    const words = (tag: string, attribute: string) =>
      tags
        .find(({ name }) => name === tag)
        ?.attributes.find(({ name }) => name === attribute)
        ?.values?.map(({ name }) => name);
    expect(words("mw-value", "figure")).toEqual(Object.keys(figureSpecs));
    expect(words("mw-overdrive-gauge", "scope")).toEqual([...scopes]);
    expect(tags).toHaveLength(elements.length);
  });
});

describe("the script files", () => {
  it("are told with what they hold and a hash that is theirs", () => {
    const folder = at("packages", "elements", "dist");
    const { files } = JSON.parse(readFileSync(join(folder, "files.json"), "utf8")) as {
      files: { file: string; integrity: string; elements?: string[] }[];
    };
    for (const { file, integrity } of files)
      expect(
        `sha384-${createHash("sha384")
          .update(readFileSync(join(folder, file)))
          .digest("base64")}`,
        file,
      ).toBe(integrity);
    const held = Object.fromEntries(files.map(({ file, elements }) => [file, elements]));
    expect(held["meshwright.js"]).toHaveLength(22);
    expect(held["meshwright-article.js"]).toEqual(["mw-build", "mw-teeth", "mw-value"]);
  });
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
