import { describe, expect, it } from "vitest";
import { countsBehind, measuredReduction, unmarkedGear } from "../../src/counted/index.js";
import { refuses } from "../exact/errors.js";
import { document, pair, read } from "../make.js";

/** Expects an error whose sentence does not begin with what was found: there is nothing. */
const says = (call: () => unknown, code: string, at: string, message: string) =>
  expect(call).toThrowError(expect.objectContaining({ code, at, message }) as Error);

describe("what was counted and measured", () => {
  it("is refused in its own words", () => {
    const turns = { motorTurns: 40, wheelTurns: 1 };
    const reversed = "Found 2/1 to 1/1; expected the smaller first.";
    refuses(
      () => measuredReduction({ ...turns, wheelTurns: { from: 2, to: 1 } }),
      "ends-reversed",
      "wheelTurns",
      reversed,
    );
    const held = "One wheel is held; expected the turns of the other alone.";
    says(
      () => measuredReduction({ ...turns, oneWheelHeld: true, otherWheelTurns: 1 }),
      "held-and-turning",
      "otherWheelTurns",
      held,
    );
    for (const otherAxlesHeld of [0, "-1/2", "1.01"]) {
      const sentence = `Found ${otherAxlesHeld}; expected a share above 0 and up to 1.`;
      refuses(() => measuredReduction({ ...turns, otherAxlesHeld }), "out-of-range", "otherAxlesHeld", sentence);
    }
    expect(() => measuredReduction({ ...turns, otherAxlesHeld: "half" })).toThrowError(
      expect.objectContaining({ at: "otherAxlesHeld" }) as Error,
    );
    expect(measuredReduction({ ...turns, otherAxlesHeld: 1 }).low.toFraction()).toBe("40/1");
    expect(measuredReduction({ ...turns, otherAxlesHeld: "1/2" }).low.toFraction()).toBe("80/1");
  });

  it("is refused of a gear that nobody has marked, with what was found", () => {
    const gear = { teeth: 20 };
    const measured = { ...gear, outside: "17.6 mm" };
    const reversed = "Found 18/1 to 17/1; expected the smaller end first.";
    const outside = { from: "18 mm", to: "17 mm" };
    refuses(() => unmarkedGear({ ...gear, outside }), "ends-reversed", "outside", reversed);
    const shifts = "expected shifts from -5 to 5 modules, the smaller first.";
    for (const [shift, found] of [
      [{ from: 1, to: 0 }, "1/1 to 0/1"],
      ["5.1", "51/10 to 51/10"],
      ["-5.1", "-51/10 to -51/10"],
    ] as const)
      refuses(() => unmarkedGear({ ...measured, shift }), "out-of-range", "shift", `Found ${found}; ${shifts}`);
    for (const shift of [5, -5])
      expect(() => unmarkedGear({ ...measured, shift })).not.toThrowError(
        expect.objectContaining({ code: "out-of-range" }) as Error,
      );
    for (const addendum of [0, "5.1"]) {
      const sentence = `Found ${addendum}; expected a height above 0 and up to 5 modules.`;
      refuses(() => unmarkedGear({ ...measured, addendum }), "out-of-range", "addendum", sentence);
    }
    const nothing = "Nothing measured; expected a diameter, a span or a centre distance.";
    says(() => unmarkedGear(gear), "nothing-measured", "outside", nothing);
    const pitchless = "A pitch without a module or diametral pitch; expected one.";
    says(() => unmarkedGear(measured, [{}]), "pitch-not-given", "series", pitchless);
    const span = "Found one span; expected the span over a tooth less beside it.";
    refuses(() => unmarkedGear({ ...measured, spanNext: "9 mm" }), "span-missing", "spanNext", span);
  });
});

describe("the counts behind an axle", () => {
  const build = read(
    document([pair("primary", 15, 62)], {
      front: [pair("front-ring", 12, 30)],
      rear: [pair("rear-ring", 12, 35)],
    }),
  );

  it("are those of all its stages by address, and of no other axle's", () => {
    const shared = { "primary.driver": 15, "primary.driven": 62 };
    expect(countsBehind(build, "front")).toEqual({ ...shared, "front-ring.driver": 12, "front-ring.driven": 30 });
    expect(countsBehind(build, "rear")).toMatchObject({ ...shared, "rear-ring.driver": 12, "rear-ring.driven": 35 });
    expect(Object.keys(countsBehind(build, "rear")).some((address) => address.startsWith("front"))).toBe(false);
    expect(countsBehind(build, "mid")).toEqual({});
  });
});
