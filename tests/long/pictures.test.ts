import { spawnSync } from "node:child_process";
import { expect, test } from "vitest";
import { at } from "../../scripts/lib/paths.js";

// Every element in every width, size of text, language, build, place and state, in all engines: some twenty thousand pictures
// an engine, in parts that can be asked for by their names (`-t "firefox, part 3"`).
const parts = 12;
const runs = ["chromium", "firefox", "webkit"].flatMap((engine) =>
  Array.from({ length: parts }, (_, n) => [engine, n + 1] as const),
);

test.each(runs)("nothing is cut, sideways or on top of another in %s, part %i", (engine, part) => {
  const { status, stdout } = spawnSync(process.execPath, [at("scripts", "engines.js"), engine], {
    env: { ...process.env, TESTS: "packages/elements/src/test/pictures/whole.ts", PART: `${part}/${parts}` },
    encoding: "utf8",
    maxBuffer: 2 ** 28,
  });
  expect(status, stdout.slice(-4000)).toBe(0);
});
