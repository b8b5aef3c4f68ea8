import { expect, it } from "vitest";
import { applyChanges, parseBuild } from "../../src/document/index.js";
import type { Part } from "../../src/drivetrain/index.js";
import { evaluate } from "../../src/evaluate/index.js";
import { figureOf } from "../../src/report/index.js";
import { everyPair, type Looked } from "./every-pair.js";
import { shelfCase } from "./shelf-cases.js";

const pitchOf = ({ module, diametralPitch, pressureAngle }: Part) => ({
  module: module ?? null,
  diametralPitch: diametralPitch ?? null,
  pressureAngle: pressureAngle ?? null,
});

it("the figure of a fit judges the gears that stand there as a search would: bores, holes, sleeves and plates", () => {
  const told = { fits: 0, not: 0, held: 0 };
  for (let seed = 1; seed <= 150; seed++) {
    const { build, stage } = shelfCase(seed);
    if (!build.mounts?.length) continue;
    const looked = everyPair(shelfCase(seed)).filter(({ driver }) => driver.module ?? driver.diametralPitch);
    for (const { driver, driven, set, counts, fits, sleeve, drivenSleeve, plate } of looked.filter(
      (_: Looked, n: number) => n % 3 === seed % 3,
    )) {
      // One piece, and nobody knows of another: who says that both are fitted says that there are two.
      if (driver === driven && !set) continue;
      const parts = [driver, driven, sleeve, drivenSleeve, plate].flatMap((part) => part?.id ?? []);
      const { build: taken } = applyChanges(build, {
        [`${stage}.driver`]: counts[0],
        [`${stage}.driven`]: counts[1],
        [`${stage}.set`]: set ? true : null,
        [`${stage}.fitted`]: [...new Set(parts)],
        ...Object.fromEntries(Object.entries(pitchOf(driver)).map(([field, to]) => [`${stage}.${field}`, to])),
      });
      const said = figureOf(evaluate(taken!), { figure: "fit", of: stage });
      expect(said === "fits", `shelf ${seed}, ${parts.join(" ")}: ${said}`).toBe(fits);
      told[fits ? "fits" : "not"]++;
      if (fits && (sleeve ?? drivenSleeve ?? plate)) told.held++;
    }
  }
  expect(told.fits).toBeGreaterThan(50);
  expect(told.not).toBeGreaterThan(200);
  expect(told.held).toBeGreaterThan(10);
});

/** The figures of a pair of 15 and 62, said to be of module 0.8, with some parts fitted. */
const said = (parts: readonly object[], fitted: readonly string[], mount: object): string[] => {
  const build = parseBuild({
    format: "meshwright-build/1",
    stages: [{ id: "primary", kind: "pair", driver: 15, driven: 62, module: "0.8", fitted }],
    outputs: [{ id: "rear", stages: [] }],
    mounts: [{ stage: "primary", ...mount }],
    parts,
  });
  return (["fit", "shortfall"] as const).map((figure) => figureOf(evaluate(build), { figure, of: "primary" }));
};

it("a gear that the stage names and that is of another pitch or angle does not mesh with its partner", () => {
  const parts = [
    { id: "p15", is: "pinion", teeth: 15, diametralPitch: 48 },
    { id: "p15-flat", is: "pinion", teeth: 15, module: "0.8", pressureAngle: "14.5" },
    { id: "p15-fit", is: "pinion", teeth: 15, diametralPitch: "31.75" },
    { id: "s62", is: "spur", teeth: 62, module: "0.8" },
  ];
  const slot = { from: "30 mm", to: "32 mm" };
  expect(said(parts, ["p15-fit", "s62"], slot)).toEqual(["fits", "fits"]);
  expect(said(parts, ["p15", "s62"], slot)).toEqual(["does not fit", "33.85%, pitch"]);
  expect(said(parts, ["p15-flat", "s62"], slot)).toEqual(["does not fit", "5.5°, pressure angle"]);
});

it("a slot is counted in the pitch that the build says, whatever stands in it", () => {
  // 77 teeth of 48 DP stand 20.37 mm apart; the known pair of module 0.8 stood 30.8 mm apart.
  const parts = [
    { id: "p15", is: "pinion", teeth: 15, diametralPitch: 48 },
    { id: "s62", is: "spur", teeth: 62, diametralPitch: 48 },
  ];
  const known = { knownPair: [15, 62], closer: "0.5 mm", farther: "0.5 mm" };
  expect(said(parts, ["p15", "s62"], known)[0]).toBe("too close");
});
