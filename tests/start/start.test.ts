// npm start serves what was built whole, or says what is missing: tried on a copy of the project.
import { spawn } from "node:child_process";
import {
  chmodSync,
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  truncateSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { delimiter, join } from "node:path";
import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { nodeTrouble } from "../../scripts/lib/install.js";
import { at, foldersIn } from "../../scripts/lib/paths.js";
import { runNode } from "../../scripts/lib/run.js";

const made = mkdtempSync(join(tmpdir(), "meshwright-start-"));
let copy: string;

/** A copy that shares the installed packages, each by a link of its own: what happens to one stays in the copy. */
function copyProject(): string {
  const folder = mkdtempSync(join(made, "copy-"));
  const isWanted = (path: string) => !/[\\/](node_modules|test)$/.test(path);
  for (const name of ["package.json", "package-lock.json", "tsconfig.json", "scripts", "demo", "seeds", "dist"])
    cpSync(at(name), join(folder, name), { recursive: true });
  cpSync(at("packages"), join(folder, "packages"), { recursive: true, filter: isWanted });
  const isRecord = (path: string) => !path.includes(".cache") || /\.cache$|\.json$/.test(path);
  cpSync(at(".cache"), join(folder, ".cache"), { recursive: true, filter: isRecord });
  const modules = join(folder, "node_modules");
  mkdirSync(join(modules, "@meshwright"), { recursive: true });
  for (const name of foldersIn(join(folder, "packages")))
    symlinkSync(join(folder, "packages", name), join(modules, "@meshwright", name));
  symlinkSync(at("tests"), join(folder, "tests"));
  symlinkSync(at("tests", "hosts"), join(modules, "@meshwright", "hosts"));
  for (const name of readdirSync(at("node_modules")).filter((one) => one !== "@meshwright"))
    symlinkSync(at("node_modules", name), join(modules, name));
  return folder;
}

/** An npm that brings nothing. */
function deadNpm(): string {
  const folder = join(copy, "bin");
  mkdirSync(folder);
  writeFileSync(join(folder, "npm"), "#!/bin/sh\nexit 1\n");
  chmodSync(join(folder, "npm"), 0o755);
  return folder;
}

/** Starts a script of the copy; resolves to what it said first, and how it ended where it did. */
function start(env: NodeJS.ProcessEnv = {}, script = "start.js") {
  const child = spawn(process.execPath, [join(copy, "scripts", script)], {
    // What is built for a test environment is another thing than what is published.
    env: { ...process.env, NODE_ENV: "", PATH: [deadNpm(), process.env.PATH].join(delimiter), PORT: "0", ...env },
    stdio: ["ignore", "pipe", "pipe"],
  });
  const said = { output: "", errors: "" };
  child.stderr.setEncoding("utf8").on("data", (text: string) => (said.errors += text));
  const ended = new Promise<number | null>((resolve) => child.once("close", resolve));
  const first = new Promise<void>((resolve) => {
    child.stdout.setEncoding("utf8").on("data", (text: string) => {
      said.output += text;
      resolve();
    });
    void ended.then(() => resolve());
  });
  return { child, said, first, ended };
}

describe("npm start", () => {
  beforeAll(async () => {
    const env = { NODE_ENV: "" };
    await runNode(at("scripts", "build.js"), ["--if-stale"], { env });
    if (!existsSync(at("dist", "api"))) await runNode(at("scripts", "docs.js"), [], { env });
  });
  beforeEach(() => {
    copy = copyProject();
  });
  afterAll(() => rmSync(made, { recursive: true, force: true }));

  it("serves whole what was gone, cut or older", async () => {
    const dist = (path: string) => join(copy, "packages", path);
    // All of one package, which every package is asked in the same way: one build is enough to see it.
    const [gone, cut, older] = ["calc/dist/exact/index.js", "calc/dist/evaluate/index.js", "calc/dist/gears/index.js"];
    rmSync(dist(gone as string));
    truncateSync(dist(cut as string), 100);
    writeFileSync(dist(older as string), "export const old = 1;\n");
    const { child, said, first, ended } = start();
    await first;
    const address = /^Meshwright demo: (http:\/\/127\.0\.0\.1:\d+\/)\n$/.exec(said.output)?.[1];
    expect(address, said.errors).toBeDefined();
    const served: Record<string, string> = {
      "calc/exact/index.js": gone as string,
      "calc/evaluate/index.js": cut as string,
      "calc/gears/index.js": older as string,
    };
    for (const [path, file] of Object.entries(served)) {
      const answer = await fetch(`${address}${path}`);
      expect(await answer.text(), path).toBe(readFileSync(at("packages", file), "utf8"));
    }
    expect((await fetch(address as string)).status).toBe(200);
    child.kill("SIGTERM");
    expect(await ended).toBe(0);
  });

  it.each(["start.js", "test.js"])(
    "%s has nothing but Node before it has installed, as in a clean clone",
    async (script) => {
      rmSync(join(copy, "node_modules"), { recursive: true });
      const { said, ended } = start({}, script);
      expect(await ended).toBe(1);
      expect(said.errors.trimEnd().split("\n").at(-1)).toMatch(
        /^npm ci could not install what is missing from node_modules: /,
      );
    },
  );

  it("says which packages are missing where they cannot be had", async () => {
    rmSync(join(copy, "node_modules", "rollup"));
    const { said, ended } = start();
    expect(await ended).toBe(1);
    expect(said.errors.trimEnd().split("\n").at(-1)).toBe(
      "npm ci could not install what is missing from node_modules: rollup.",
    );
    expect(said.output).toBe("");
  });

  it("says so where a package is there and holds nothing, and serves no half of a build", async () => {
    const folder = join(copy, "node_modules", "rollup");
    rmSync(folder);
    mkdirSync(folder);
    cpSync(at("node_modules", "rollup", "package.json"), join(folder, "package.json"));
    rmSync(join(copy, "packages", "calc", "dist"), { recursive: true });
    const { said, ended } = start();
    expect(await ended).toBe(1);
    expect(said.errors).toMatch(
      /^calc cannot be built: node_modules is incomplete \(.*rollup.*\); npm ci brings what is missing\.$/m,
    );
    expect(said.output).toBe("");
  });

  it("says which Node is needed", async () => {
    const file = join(copy, "package.json");
    writeFileSync(file, readFileSync(file, "utf8").replace(/"node": ">=[\d.]+"/, '"node": ">=99.1"'));
    const { said, ended } = start();
    expect(await ended).toBe(1);
    expect(said.errors).toBe(`Node 99.1 or newer is needed; this is ${process.versions.node}.\n`);
    expect(said.output).toBe("");
  });
});

it.each([
  ["18.20.4", true],
  ["20.9.0", true],
  ["20.18.9", true],
  ["20.19.0", false],
  ["20.20.2", false],
  ["22.0.0", false],
])("Node %s is too old: %s", (version, isOlder) => {
  expect(nodeTrouble(version, ">=20.19") !== undefined).toBe(isOlder);
});
