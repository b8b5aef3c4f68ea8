import { spawnSync } from "node:child_process";
import { expect, test } from "vitest";
import { at } from "../../scripts/lib/paths.js";

// Every element in every width, size of text, language, build, place and state, in all engines.
test.each(["chromium", "firefox", "webkit"])("nothing is cut, sideways or on top of another in %s", (engine) => {
  const { status, stdout } = spawnSync(process.execPath, [at("scripts", "engines.js"), engine], {
    env: { ...process.env, TESTS: "packages/elements/src/test/pictures/whole.ts" },
    encoding: "utf8",
    maxBuffer: 2 ** 28,
  });
  expect(status, stdout.slice(-4000)).toBe(0);
});
