import { readBuild } from "@meshwright/calc/document";
import { evaluate } from "@meshwright/calc/evaluate";
import { figureOf, versionOf } from "@meshwright/calc/report";
import { describe, expect, it } from "vitest";
import {
  countsOf,
  documentOf,
  driveFrom,
  expected,
  queryFor,
  randomFrom,
} from "../../packages/elements/src/test/drives.js";
import { seed } from "./seed.js";

const builds = Number(process.env.BUILDS ?? 100_000);

describe("builds at random", () => {
  it(
    `say what fractions of their own say, ${builds} of them, from seed ${seed}`,
    () => {
      for (let n = 0; n < builds; n++) {
        const drive = driveFrom(randomFrom(seed + n));
        const counts = countsOf(drive);
        const wanted = expected(drive, counts, counts);
        const reading = readBuild(documentOf(drive));
        if (!reading.ok) throw new Error(`seed ${seed + n}: ${reading.findings[0]!.message}`);
        const evaluation = evaluate(reading.build);
        const version = (id: string) => {
          const build = versionOf(reading.build, id);
          return build && evaluate(build);
        };
        for (const [name, text] of Object.entries(wanted)) {
          if (/^(gauge|summary)/.test(name)) continue;
          const { at = "article", ...query } = queryFor(name);
          const made = figureOf(version(at) ?? evaluation, { figure: "reduction", ...query }, { version });
          // Between a number and its unit stands a blank that does not break.
          const said = made.replace(/\u00a0/g, " ");
          if (said !== text) expect(`${name}: ${said}`, `seed ${seed + n}`).toBe(`${name}: ${text}`);
        }
      }
    },
    6 * 3_600_000,
  );
});
