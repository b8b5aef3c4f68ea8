// Whatever happens while a file is mended, it is whole: the old one or the new one.
import { spawnSync } from "node:child_process";
import {
  chmodSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  realpathSync,
  rmSync,
  statSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { afterAll, beforeEach, describe, expect, it } from "vitest";
import { run } from "../src/command.js";
import { builtCommand } from "./built-command.js";
import { page } from "./pages.js";

const command = builtCommand();
const folder = realpathSync(mkdtempSync(join(tmpdir(), "figures-kill-")));
const file = join(folder, "post.html");
const old = page(`<p>Front <mw-value of="front">44.31</mw-value></p>${"<p>sand</p>".repeat(1000)}`);
const mended = old.replace("44.31", "44.30");
const faults = pathToFileURL(join(import.meta.dirname, "faults.js")).href;

const text = () => readFileSync(file, "utf8");
const litter = () => readdirSync(folder).filter((name) => name !== "post.html");

/** Mends the file, with a fault at one of the calls. */
const mend = (fault: string, at = 0) =>
  spawnSync(process.execPath, ["--import", faults, command.path, "--write", file], {
    env: { ...process.env, FAULT: fault, FAULT_AT: String(at), FAULT_FOLDER: folder },
    encoding: "utf8",
  });

function begin(): void {
  for (const name of litter()) rmSync(join(folder, name));
  writeFileSync(file, old);
  chmodSync(file, 0o640);
}

/** A next run is not kept from its work by what is left of the last one. */
function goesOn(): void {
  expect(litter().every((name) => /^\.figures-[\w-]+\.tmp$/.test(name))).toBe(true);
  const said: string[] = [];
  expect(run(["--write", folder], (line) => said.push(line))).toBe(0);
  expect(said.at(-1)).toMatch(/^1 compared/);
  expect(text()).toBe(mended);
  expect(statSync(file).mode & 0o777).toBe(0o640);
}

describe("the command", () => {
  beforeEach(begin);
  afterAll(() => {
    command.remove();
    rmSync(folder, { recursive: true, force: true });
  });

  it("writes, when nothing happens", () => {
    const { status, stdout } = mend("");
    expect([status, text(), litter()]).toEqual([0, mended, []]);
    expect(stdout).toContain("1 mended");
  });

  it.each(["before", "after"])(
    "leaves a whole file when it is killed %s any of its calls",
    { timeout: 120_000 },
    (when) => {
      const seen = new Set<string>();
      let at = 1;
      for (; ; at++) {
        begin();
        const { signal } = mend(when, at);
        if (!signal) break;
        expect([old, mended]).toContain(text());
        expect(statSync(file).mode & 0o777).toBe(0o640);
        seen.add(text());
        goesOn();
      }
      // It was killed with either file in place, and at more than a few calls.
      expect(seen.size).toBe(2);
      expect(at).toBeGreaterThan(10);
      expect(text()).toBe(mended);
    },
  );

  it("leaves the old file when it is killed in the middle of writing", () => {
    expect(mend("half").signal).toBe("SIGKILL");
    expect(text()).toBe(old);
    goesOn();
  });

  it("leaves the old file, and no litter, and says so, when the disk is full", () => {
    const { status, stdout, stderr } = mend("full");
    expect([status, text(), litter()]).toEqual([2, old, []]);
    expect(stderr).toContain("the disk is full; it stays as it was");
    expect(stdout).toContain("1 stale: 0 mended, 1 left");
    goesOn();
  });
});
