import { describe, expect, it } from "vitest";
import { countsBehind, measuredReduction, unmarkedGear } from "../../src/counted/index.js";
import { document, pair, read } from "../make.js";

/** What a call is refused with: where, and in which words. */
function refusal(call: () => unknown): readonly [code: string, at: string, message: string] | undefined {
  try {
    call();
  } catch (error) {
    const { code, at, message } = error as { code: string; at: string; message: string };
    return [code, at, message];
  }
  return undefined;
}

describe("what was counted and measured", () => {
  it("is refused in its own words", () => {
    const turns = { motorTurns: 40, wheelTurns: 1 };
    expect(refusal(() => measuredReduction({ ...turns, wheelTurns: { from: 2, to: 1 } }))).toEqual([
      "ends-reversed",
      "wheelTurns",
      "Found 2/1 to 1/1; expected the smaller first.",
    ]);
    expect(refusal(() => measuredReduction({ ...turns, oneWheelHeld: true, otherWheelTurns: 1 }))).toEqual([
      "held-and-turning",
      "otherWheelTurns",
      "One wheel is held; expected the turns of the other alone.",
    ]);
    for (const otherAxlesHeld of [0, "-1/2", "1.01"])
      expect(refusal(() => measuredReduction({ ...turns, otherAxlesHeld }))).toEqual([
        "out-of-range",
        "otherAxlesHeld",
        `Found ${otherAxlesHeld}; expected a share above 0 and up to 1.`,
      ]);
    expect(refusal(() => measuredReduction({ ...turns, otherAxlesHeld: "half" }))?.[1]).toBe("otherAxlesHeld");
    expect(measuredReduction({ ...turns, otherAxlesHeld: 1 }).low.toFraction()).toBe("40/1");
    expect(measuredReduction({ ...turns, otherAxlesHeld: "1/2" }).low.toFraction()).toBe("80/1");
  });

  it("is refused of a gear that nobody has marked, with what was found", () => {
    const gear = { teeth: 20 };
    expect(refusal(() => unmarkedGear({ ...gear, outside: { from: "18 mm", to: "17 mm" } }))?.slice(0, 2)).toEqual([
      "ends-reversed",
      "outside",
    ]);
    expect(refusal(() => unmarkedGear({ ...gear, outside: { from: "18 mm", to: "17 mm" } }))?.[2]).toBe(
      "Found 18/1 to 17/1; expected the smaller end first.",
    );
    const shifts = "expected shifts from -5 to 5 modules, the smaller first.";
    for (const [shift, found] of [
      [{ from: 1, to: 0 }, "1/1 to 0/1"],
      ["5.1", "51/10 to 51/10"],
      ["-5.1", "-51/10 to -51/10"],
    ] as const)
      expect(refusal(() => unmarkedGear({ ...gear, outside: "17.6 mm", shift }))).toEqual([
        "out-of-range",
        "shift",
        `Found ${found}; ${shifts}`,
      ]);
    for (const shift of [5, -5])
      expect(refusal(() => unmarkedGear({ ...gear, outside: "17.6 mm", shift }))?.[0]).not.toBe("out-of-range");
    for (const addendum of [0, "5.1"])
      expect(refusal(() => unmarkedGear({ ...gear, outside: "17.6 mm", addendum }))).toEqual([
        "out-of-range",
        "addendum",
        `Found ${addendum}; expected a height above 0 and up to 5 modules.`,
      ]);
    expect(refusal(() => unmarkedGear(gear))).toEqual([
      "nothing-measured",
      "outside",
      "Nothing measured; expected a diameter, a span or a centre distance.",
    ]);
    expect(refusal(() => unmarkedGear({ ...gear, outside: "17.6 mm" }, [{}]))).toEqual([
      "pitch-not-given",
      "series",
      "A pitch without a module or diametral pitch; expected one.",
    ]);
    expect(refusal(() => unmarkedGear({ ...gear, outside: "17.6 mm", spanNext: "9 mm" }))).toEqual([
      "span-missing",
      "spanNext",
      "Found one span; expected the span over a tooth less beside it.",
    ]);
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
