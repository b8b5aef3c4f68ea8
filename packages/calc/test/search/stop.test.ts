import { execFile } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { promisify } from "node:util";
import { build } from "esbuild";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Part } from "../../src/drivetrain/index.js";
import { findPairs, findTrains, nearMisses } from "../../src/search/index.js";
import { counts } from "./brute.js";

const free = (number: number, from: number, to: number) =>
  Array.from({ length: number }, (_, n) => ({ id: `s${n}`, drivers: counts(from, to), drivens: counts(from, to) }));
const total = [{ id: "total", from: 20, to: 21 }];
const sets = (name: string, number: number): Part[] =>
  counts(1, number).map((n) => ({ id: `${name}${n}`, is: "set", driver: 10 + n, driven: 90 - (n % 40) }));
const all = (search: () => Iterable<unknown>) => () => [...search()];

describe("a search that would not fit into memory", () => {
  const refused = (values: object) => expect.objectContaining({ code: "too-many-choices", values }) as Error;

  it("is refused with how many combinations there are, before anything is worked out", () => {
    // Six stages of 25 drivers and 25 driven gears: 25 to the 12th, half of them 25 to the 6th.
    expect(all(() => findTrains({ stages: free(6, 8, 32), outputs: total }))).toThrow(
      refused({ combinations: String(25n ** 12n), found: 25 ** 6, allowed: 2 ** 20 }),
    );
    expect(() => findTrains({ stages: free(6, 8, 32), outputs: total }).next()).toThrow("59,604,644,775,390,625");
  });

  it("is refused where axles are chosen apart, and where wheels multiply", () => {
    const outputs = ["front", "rear"].map((id) => ({ id, from: 1, to: 9 }));
    const stages = outputs.map(({ id }) => ({ id: `${id}-ring`, on: [id], sets: sets(id, 1025) }));
    expect(all(() => findTrains({ stages, outputs }))).toThrow(
      refused({ combinations: String(1025 ** 2), found: 1025 ** 2, allowed: 2 ** 20 }),
    );
    const wheels = counts(1, 1025).map((n): Part => ({ id: `w${n}`, is: "wheel", diameter: `${100 + n} mm` }));
    const tyred = outputs.map((output) => ({ ...output, wheels }));
    expect(all(() => findTrains({ stages: [], outputs: tyred }))).toThrow(
      refused({ combinations: String(1025 ** 2), found: 1025 ** 2, allowed: 2 ** 20 }),
    );
  });

  it("is refused where all finds have to be held, and where bare counts are too many to pair", () => {
    expect(
      all(() =>
        findTrains({ stages: free(3, 9, 40), outputs: [{ id: "total", from: 10, to: 30 }], order: "cheapest" }),
      ),
    ).toThrow(refused({ found: expect.any(Number) as number, allowed: 2 ** 20 }));
    const question = { drivers: counts(1, 1025), drivens: counts(1, 1024), outputs: total };
    for (const search of [findPairs, nearMisses])
      expect(all(() => search(question))).toThrow(refused({ found: 1025 * 1024, allowed: 2 ** 20 }));
  });

  it("takes as much as is allowed", () => {
    const outputs = ["front", "rear"].map((id) => ({ id, from: 1, to: 9 }));
    const stages = outputs.map(({ id }) => ({ id: `${id}-ring`, on: [id], sets: sets(id, 1024) }));
    expect(findTrains({ stages, outputs }).next().done).toBe(false);
  });
});

describe("stopping", () => {
  it("ends a search that is aborted without another find, wherever it is", () => {
    const question = { stages: free(2, 8, 60), outputs: [{ id: "total", from: 9, to: "9.1" }] };
    const steps = [...findTrains(question)].length;
    for (const after of [0, 1, 5, Math.floor(steps / 2), steps - 1]) {
      const signal = { aborted: false };
      let seen = 0;
      for (const { found } of findTrains({ ...question, signal })) {
        expect(signal.aborted && found.length).toBeFalsy();
        signal.aborted = ++seen > after;
      }
      expect(seen).toBeLessThanOrEqual(after + 1);
    }
  });

  it("leaves the order as it is when the walk has to be made again for what comes next", () => {
    // 300 × 300 equal pairs: more than are put in order at once.
    const same = (name: string) =>
      counts(1, 300).map((n): Part => ({
        id: `${name}${String(n).padStart(3, "0")}`,
        is: "set",
        driver: 10,
        driven: 20,
      }));
    const stages = [
      { id: "a", sets: same("a") },
      { id: "b", sets: same("b") },
    ];
    const ids = [...findTrains({ stages, outputs: [{ id: "total", from: 3, to: 5 }] })].flatMap(({ found }) =>
      found.map(({ picks }) => picks.map(({ set }) => set!.id).join(" ")),
    );
    expect(ids).toHaveLength(300 * 300);
    expect(ids).toEqual([...ids].sort());
    expect(new Set(ids).size).toBe(ids.length);
  });
});

describe("between two pauses", () => {
  const folder = mkdtempSync(join(tmpdir(), "meshwright-steps-"));
  afterAll(() => rmSync(folder, { recursive: true }));
  let work: Record<string, { steps: number; worst: number; all: number }>;

  beforeAll(async () => {
    const outfile = join(folder, "calc.mjs");
    const entry = fileURLToPath(new URL("../../src/search/index.ts", import.meta.url));
    await build({ entryPoints: [entry], bundle: true, format: "esm", outfile, logLevel: "error" });
    const script = fileURLToPath(new URL("steps.js", import.meta.url));
    const { stdout } = await promisify(execFile)(process.execPath, [script, outfile]);
    work = JSON.parse(stdout) as typeof work;
  });

  // A block of code is run some ten to hundred million times a second: 400,000 of them are well below 50 ms.
  it("no search does more than 400,000 small things, whatever it is at", () => {
    const worst = Object.entries(work).map(([name, { worst: most }]) => [name, most] as const);
    expect(worst.filter(([, most]) => most > 400_000)).toEqual([]);
    expect(worst.length).toBeGreaterThanOrEqual(11);
    // The searches are not idle, and pause often.
    for (const { steps, all: sum } of Object.values(work)) {
      expect(sum).toBeGreaterThan(100_000);
      expect(steps).toBeGreaterThan(5);
    }
  });
});
