// A file of 9 MB, and 200 times the power is cut while it is mended: always the old file, or the new one.
import { spawn } from "node:child_process";
import { existsSync, mkdtempSync, readdirSync, readFileSync, realpathSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import { afterAll, describe, expect, it } from "vitest";
import { builtCommand } from "../../packages/figures/test/built-command.js";
import { build } from "../../packages/figures/test/pages.js";

const kills = 200;
const command = builtCommand();
const folder = realpathSync(mkdtempSync(join(tmpdir(), "figures-long-")));
const file = join(folder, "post.html");

const stale = '<p>Front <mw-value of="front">44.31</mw-value> on dry sand.</p>\n';
const sand = `<p>${"sand and water ".repeat(60)}</p>\n`;
const old = Buffer.from(
  build + `${stale}${sand.repeat(9)}`.repeat(Math.ceil(9_000_000 / (stale.length + 9 * sand.length))),
);
const mended = Buffer.from(old.toString().replaceAll("44.31", "44.30"));

// Numbers that look random and are the same every time.
let state = 20_261_003;
const random = (): number => (state = (state * 48_271) % 2_147_483_647) / 2_147_483_647;

const isBegun = () => readdirSync(folder).some((name) => name.endsWith(".tmp"));

/** Mends the file; after a while, or a while after it began to write, the process is killed. */
async function mend(after: number | undefined, fromWriting = false): Promise<{ killed: boolean; took: number }> {
  const began = performance.now();
  const child = spawn(process.execPath, [command.path, "--write", file], { stdio: "ignore" });
  let over = false;
  const exit = new Promise<NodeJS.Signals | null>((resolve) =>
    child.once("exit", (_, signal) => {
      over = true;
      resolve(signal);
    }),
  );
  if (after !== undefined) {
    while (fromWriting && !over && !isBegun()) await wait(1);
    await Promise.race([wait(after), exit]);
    child.kill("SIGKILL");
  }
  return { killed: (await exit) === "SIGKILL", took: performance.now() - began };
}

describe("a large file", () => {
  afterAll(() => {
    command.remove();
    rmSync(folder, { recursive: true, force: true });
  });

  it(`is whole after each of ${kills} kills`, { timeout: 3_600_000 }, async () => {
    writeFileSync(file, old);
    const { took } = await mend(undefined);
    expect(readFileSync(file).equals(mended)).toBe(true);
    let [killed, written] = [0, 0];
    for (let n = 0; n < kills; n++) {
      writeFileSync(file, old);
      // Every other time in the moments in which it writes.
      const result = n % 2 ? await mend(random() * 40, true) : await mend(random() * took * 1.1);
      if (result.killed) killed++;
      const left = readFileSync(file);
      const isNew = left.equals(mended);
      if (isNew) written++;
      expect(isNew || left.equals(old), `kill ${n}: ${left.length} bytes`).toBe(true);
      for (const name of readdirSync(folder)) if (name !== "post.html") rmSync(join(folder, name));
    }
    expect(existsSync(file)).toBe(true);
    expect(killed).toBeGreaterThan(kills / 2);
    expect(written).toBeLessThan(kills);
  });
});
