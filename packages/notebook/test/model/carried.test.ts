import { linkOfBuild, parseBuild } from "@meshwright/calc/document";
import type { Build } from "@meshwright/calc/drivetrain";
import { describe, expect, it } from "vitest";
import { broughtTo, carriedIn, linkWithMeasured, newNotebook, type Carried } from "../../src/model/index.js";

// What was measured in the garage comes home by a link. Turnstone: 12 to 48, then front 11 to 33 and rear 12 to 36.
const turnstone = {
  format: "meshwright-build/1",
  title: "Turnstone",
  stages: [{ id: "gears", label: "Motor gears", kind: "pair", driver: 12, driven: 48, module: "0.8" }],
  outputs: [
    { id: "front", label: "Front", stages: [{ id: "front-ring", kind: "pair", driver: 11, driven: 33 }] },
    { id: "rear", label: "Rear", stages: [{ id: "rear-ring", kind: "pair", driver: 12, driven: 36 }] },
  ],
};
const note = { of: "gears", text: "24.1 mm", date: "2026-11-01", with: { "gears.driver": 12, "gears.driven": 48 } };

const home = { ...newNotebook("one", "Turnstone"), build: parseBuild(turnstone) };
const carried = async (link: string): Promise<Carried> => {
  const found = await carriedIn(link, "fresh");
  if (typeof found === "string") throw new Error(found);
  return found;
};

describe("what a link brings home", () => {
  const measured = {
    ...home,
    build: parseBuild({
      ...turnstone,
      measurements: [
        { what: "front", motorTurns: 36, wheelTurns: "3" },
        { what: "rear", motorTurns: 36, wheelTurns: "3" },
      ],
    }),
    bench: [note],
  };

  it("is what this notebook has not", async () => {
    const brought = broughtTo(home, await carried(await linkWithMeasured(measured)));
    expect(brought.fields.build?.measurements).toEqual(measured.build.measurements);
    expect(brought.fields.bench).toEqual([note]);
    expect(brought.left).toEqual([]);
    expect(broughtTo(measured, await carried(await linkWithMeasured(measured)))).toEqual({
      measurements: [],
      bench: [],
      fields: {},
      left: [],
    });
  });

  it("says what of it has no place here: an axle that is gone, a stage that is gone", async () => {
    const bare = parseBuild({ ...turnstone, outputs: turnstone.outputs.slice(0, 1), stages: [] });
    const brought = broughtTo({ ...home, build: bare }, await carried(await linkWithMeasured(measured)));
    expect(brought.fields.build?.measurements).toEqual(measured.build.measurements!.slice(0, 1));
    expect(brought.bench).toEqual([]);
    expect(brought.left).toEqual([
      "A count by hand of Rear stays in the link: there is no Rear in this notebook any more.",
      "A centre distance of Motor gears stays in the link: there is no Motor gears in this notebook any more.",
    ]);
  });

  it("takes in what can be, beside what cannot", async () => {
    const there = await carried(await linkWithMeasured(measured));
    const [first, second] = measured.build.measurements!;
    const build = { ...there.notebook.build!, measurements: [{ ...first!, wheelTurns: "-1" }, second!] } as Build;
    const brought = broughtTo(home, { ...there, notebook: { ...there.notebook, build } });
    expect(brought.measurements).toEqual([second]);
    expect(brought.left).toEqual([
      expect.stringMatching(/^A count by hand stays in the link: Expected a number above 0/),
    ]);
  });

  it("counts centre distances that were changed on their way", async () => {
    const link = await linkOfBuild({ ...measured.build, "x-bench": [note, { ...note, text: 24 }, "24"] } as Build);
    const there = await carried(link);
    expect(there.notebook.bench).toEqual([note]);
    expect(broughtTo(home, there).left).toEqual([
      "2 centre distances in the link cannot be read: they were changed on their way.",
    ]);
  });
});
