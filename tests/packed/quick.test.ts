// The packages as they would go to a registry, in the hands of a stranger: the part that takes seconds. What brings frameworks
// along is run by npm run test:packed.
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join, relative } from "node:path";
import { createContext, runInContext } from "node:vm";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { isPublic, withImports } from "../../scripts/lib/examples.js";
import { faultsOf, published } from "../../scripts/lib/pack.js";
import { at, filesBelow, root } from "../../scripts/lib/paths.js";
import { commandOf } from "../../scripts/lib/run.js";
import { examplesOf } from "../examples/read.js";
import { checkedProgram, fencesIn } from "../examples/program.js";
import { cleanFolder, install, nodeIn, tarballsIn, type Tarballs } from "./install.js";

const packs = cleanFolder();
const stranger = cleanFolder();
const { folder } = stranger;
const inside = (name: string, ...parts: string[]): string =>
  join(folder, "node_modules", "@meshwright", name, ...parts);
let tarballs: Tarballs;

interface Manifest {
  readonly exports: Readonly<Record<string, string | { readonly types?: string; readonly default?: string }>>;
}
const manifestOf = (name: string) => JSON.parse(readFileSync(inside(name, "package.json"), "utf8")) as Manifest;

/** Every address that a package can be imported by, those with a pattern left out. */
const entriesOf = (name: string, part: "types" | "default"): string[] =>
  Object.entries(manifestOf(name).exports)
    .filter(([path, target]) => typeof target === "object" && target[part] !== undefined && !path.includes("*"))
    .map(([path]) => `@meshwright/${name}${path.slice(1)}`);

beforeAll(async () => {
  tarballs = await tarballsIn(packs.folder);
  await install(folder, tarballs);
});

afterAll(() => {
  packs.remove();
  stranger.remove();
});

describe.each(published)("the tarball of %s", (name) => {
  it("keeps what its package.json promises, for every way to find types by import", async () => {
    expect(await faultsOf(tarballs[name]!)).toEqual([]);
  });

  it("says what it is, under which licence, and what has changed", () => {
    const readme = readFileSync(inside(name, "README.md"), "utf8");
    expect(readme.startsWith(`# @meshwright/${name}\n`)).toBe(true);
    expect(readme).toMatch(/^```(ts|html|console|sh)$/m);
    expect(readFileSync(inside(name, "LICENSE"), "utf8")).toBe(readFileSync(at("LICENSE"), "utf8"));
    const { version } = JSON.parse(readFileSync(inside(name, "package.json"), "utf8")) as { version: string };
    expect(readFileSync(inside(name, "CHANGELOG.md"), "utf8")).toContain(`\n## ${version}\n`);
  });

  it("leads a debugger to the sources, and holds no test and no path of the machine that made it", () => {
    const files = listed(inside(name));
    expect(files.filter((path) => /\.test\./.test(path))).toEqual([]);
    const maps = files.filter((path) => path.endsWith(".map"));
    expect(maps.length).toBeGreaterThan(2);
    for (const path of maps) {
      const map = JSON.parse(readFileSync(inside(name, path), "utf8")) as {
        sources: string[];
        sourcesContent?: string[];
      };
      for (const [n, source] of map.sources.entries())
        expect(map.sourcesContent?.[n] ?? existsSync(join(dirname(inside(name, path)), source)), path).toBeTruthy();
    }
    for (const path of files.filter((one) => /\.(js|ts|json|map|md)$/.test(one)))
      expect(readFileSync(inside(name, path), "utf8").includes(root), path).toBe(false);
  });
});

/** All files of an installed package, by their paths in it. */
const listed = (place: string): string[] =>
  readdirSync(place, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(place, join(entry.parentPath, entry.name)).replace(/\\/g, "/"));

/** Compiles a folder's files strictly, declarations of others included; answers with what the compiler said. */
async function compiled(files: readonly string[], resolution: "bundler" | "nodenext"): Promise<string> {
  const project = join(folder, `tsconfig.${resolution}.json`);
  const module = resolution === "bundler" ? "esnext" : "nodenext";
  const compilerOptions = {
    ...{ module, moduleResolution: resolution, target: "es2022", lib: ["es2023", "dom", "dom.iterable"], types: [] },
    ...{ strict: true, exactOptionalPropertyTypes: true, skipLibCheck: false, noEmit: true },
  };
  writeFileSync(project, JSON.stringify({ compilerOptions, files }));
  return (await nodeIn(folder, commandOf("typescript-native", "tsc"), "-p", project)).output.trim();
}

/** The code of a language that the guide gives to copy. Whole files of the frameworks' own apps are run with those. */
function shownInGuide(language: string): readonly string[] {
  const shown = new RegExp(`<code data-snippet="${language}"\\s*>([^<]*)</code\\s*>`, "g");
  return filesBelow(at("demo", "guide"), (path) => path.endsWith(".html")).flatMap((path) =>
    [
      ...readFileSync(path, "utf8")
        .replace(/<!-- made: shown [^]*?<!-- end -->/g, "")
        .matchAll(shown),
    ].map(([, text]) => text!.replace(/&gt;/g, ">").replace(/&lt;/g, "<").replace(/&amp;/g, "&")),
  );
}

/** The lines for a page, which have no answer to compare: strictly typed, with what the elements add to the page's types. */
function linesForPages(): readonly string[] {
  const lines = [
    ...shownInGuide("js"),
    ...shownInGuide("ts").filter((text) => !text.includes("// =>")),
    ...["elements", "notebook"].flatMap((name) =>
      fencesIn(readFileSync(at(`packages/${name}/README.md`), "utf8"), "js"),
    ),
  ];
  expect(lines.length).toBeGreaterThan(1);
  mkdirSync(join(folder, "lines"), { recursive: true });
  return lines.map((code, n) => {
    const path = `lines/${n + 1}.ts`;
    writeFileSync(join(folder, path), `import type {} from "@meshwright/elements";\n${code}`);
    return path;
  });
}

/** Every example of the doc comments, of the READMEs and of the guide, as a program of its own with its imports. */
async function programs(): Promise<readonly string[]> {
  const sources = at("packages", "calc", "src");
  const comments = filesBelow(sources, (path) => path.endsWith(".ts")).flatMap((path) =>
    examplesOf(relative(sources, path), readFileSync(path, "utf8")).map(({ code }) => code),
  );
  const readmes = ["README.md", ...published.map((name) => `packages/${name}/README.md`)].flatMap((path) =>
    fencesIn(readFileSync(at(path), "utf8"), "ts"),
  );
  const guide = shownInGuide("ts").filter((text) => text.includes("// =>"));
  expect(guide.length).toBeGreaterThan(1);
  mkdirSync(join(folder, "examples"), { recursive: true });
  const made = await Promise.all(
    [...comments, ...readmes, ...guide].map(async (code, n) => {
      // What a file keeps to its folder has examples as well, for those who work there.
      if (!(await isPublic(code))) return [];
      const path = `examples/${n + 1}.ts`;
      writeFileSync(join(folder, path), checkedProgram(await withImports(code)));
      return path;
    }),
  );
  return made.flat();
}

describe("a strict program", () => {
  // The examples of READMEs and doc comments are compiled along with one of the two.
  it.each(["bundler", "nodenext"] as const)("compiles against every entry by %s", async (resolution) => {
    const frameworks = /\/(react|preact|vue|svelte)$/;
    const every = published
      .flatMap((name) => entriesOf(name, "types"))
      .filter((entry) => !frameworks.test(entry))
      .map(
        (entry, n) => `import type * as entry${n} from "${entry}";\nexport type Entry${n} = keyof typeof entry${n};`,
      );
    writeFileSync(join(folder, "entries.ts"), every.join("\n"));
    writeFileSync(join(folder, "uses.ts"), readFileSync(at("tests", "packed", "cases", "typescript", "uses.ts")));
    const examples = resolution === "nodenext" ? [...(await programs()), ...linesForPages()] : [];
    expect(await compiled(["entries.ts", "uses.ts", ...examples], resolution)).toBe("");
  });
});

describe("plain JavaScript", () => {
  it("imports every entry on a server, where there is no page", async () => {
    const entries = published
      .flatMap((name) => entriesOf(name, "default"))
      .filter((entry) => !/notebook|\.js$/.test(entry));
    writeFileSync(
      join(folder, "server.js"),
      `for (const entry of ${JSON.stringify(entries)}) await import(entry);\nconsole.log("all");\n`,
    );
    expect(await nodeIn(folder, "server.js")).toEqual({ code: 0, output: "all\n" });
  });

  it("works a figure out in a worker", async () => {
    writeFileSync(
      join(folder, "worker.js"),
      `import { isMainThread, parentPort, Worker } from "node:worker_threads";
import { evaluate, figureOf, parseBuild } from "@meshwright/calc";
if (isMainThread) new Worker(new URL(import.meta.url)).on("message", (text) => console.log(text));
else {
  const stages = [{ id: "primary", kind: "pair", driver: 15, driven: 62 }];
  const build = parseBuild({ format: "meshwright-build/1", stages, outputs: [{ id: "rear", stages: [] }] });
  parentPort.postMessage(figureOf(evaluate(build), { figure: "fraction" }));
}
`,
    );
    expect(await nodeIn(folder, "worker.js")).toEqual({ code: 0, output: "62/15\n" });
  });

  it("runs every example of the READMEs and doc comments, and each comes to what it says", async () => {
    const { code, output } = await nodeIn(folder, ...(await runner()));
    expect(output).toMatch(/^\d+ outcomes\n$/);
    expect(code).toBe(0);
    expect(Number(/\d+/.exec(output)![0])).toBeGreaterThan(150);
  });

  it("keeps still where a script file runs without a page", () => {
    const files = manifestOf("elements").exports;
    for (const target of Object.values(files)) {
      const path = typeof target === "string" ? target : (target.default ?? "");
      if (!/\/meshwright[\w-]*\.js$/.test(path)) continue;
      runInContext(readFileSync(inside("elements", path), "utf8"), createContext({}));
    }
  });

  it("finds a stale figure by the command", async () => {
    writeFileSync(
      join(folder, "post.md"),
      '<mw-build stages="Spur: 16 to 62" rear="Ring: 12 to 35"></mw-build>\n\n<p>It is <mw-value of="rear">12.06</mw-value>.</p>\n',
    );
    const { code, output } = await nodeIn(folder, join("node_modules", ".bin", "figures"), "post.md");
    expect(output).toContain("says “12.06”, should say “11.30”");
    expect(code).toBe(1);
  });
});

/** One program that runs all examples one after the other. */
async function runner(): Promise<string[]> {
  const { transform } = await import("esbuild");
  for (const path of await programs()) {
    const { code } = await transform(readFileSync(join(folder, path), "utf8"), { loader: "ts" });
    writeFileSync(join(folder, path.replace(/ts$/, "js")), code);
  }
  const names = readdirSync(join(folder, "examples")).filter((name) => name.endsWith(".js"));
  const lines = names.map((name) => `await import("./examples/${name}");`);
  writeFileSync(
    join(folder, "examples.js"),
    `globalThis.outcomes = 0;\n${lines.join("\n")}\nconsole.log(\`\${outcomes} outcomes\`);\n`,
  );
  return ["examples.js"];
}
