import { parseBuild } from "../../src/document/index.js";
import type { Build, Part } from "../../src/drivetrain/index.js";
import { randomFrom } from "./brute.js";
import { over, type Ratio, ratio, times } from "./fractions.js";

// Random shelves of parts of different origin, and the builds that look for something on them.

const angles = [undefined, 20, "14.5"] as const;
// 25.4 / 31.75 is 0.8 exactly: two ways to write one pitch.
const pitches = [{ module: "0.8" }, { diametralPitch: "31.75" }, { diametralPitch: "32" }, { diametralPitch: "48" }];
const bores = ["3.175 mm", "1/8 in", "3.17 mm", "4 mm", "5 mm"];
const holes = [3, 4, 6].flatMap((count) => ["20 mm", "24 mm"].map((diameter) => ({ count, diameter })));

export interface ShelfCase {
  readonly build: Build;
  readonly stage: string;
  /** How many of each gear the stage takes. */
  readonly pieces: number;
  readonly rests: readonly (readonly [low: Ratio, high: Ratio])[];
}

type Random = ReturnType<typeof randomFrom>;

/** A shelf of gears, sets, sleeves and plates; one piece may sit in the stage that is called other. */
function shelfOf(random: Random, other: object & { readonly driver: number }): Part[] {
  const pick = <T>(list: readonly T[]): T => list[random(list.length)]!;

  const some = (most: number, make: (n: number) => Part): Part[] =>
    Array.from({ length: random(most + 1) }, (_, n) => make(n));
  // Half the shelves are of few pitches: more goes together.
  const usual = random(2) ? [pick(pitches)] : pitches;
  const usualAngles: readonly (number | string | undefined)[] = random(2) ? [undefined, 20] : angles;
  const pitch = () => {
    const pressureAngle = pick(usualAngles);
    return { ...pick(usual), ...(pressureAngle !== undefined && { pressureAngle }) };
  };
  const bought = () => ({
    ...(random(5) && {
      price: { amount: `${random(4)}.${pick(["05", "1", "50"])}`, currency: random(9) ? "EUR" : "GBP" },
    }),
    ...(random(3) && { available: random(4) > 0 }),
    ...(random(3) === 0 && { owned: random(3) }),
    ...(random(6) === 0 && { status: pick(["owned", "spare", "ordered"] as const) }),
    ...(random(3) === 0 && { pack: 1 + random(3) }),
  });
  const gear =
    (is: "pinion" | "spur" | "gear", first: number, range: number) =>
    (n: number): Part => ({
      id: `${is}-${random(90)}-${n}`,
      is,
      teeth: first + random(range),
      ...(random(12) && pitch()),
      ...((is !== "spur" || random(2)) && random(3) && { bore: pick(bores) }),
      ...(is !== "pinion" && random(3) && { circles: [pick(holes), pick(holes)].slice(0, 1 + random(2)) }),
      ...bought(),
    });
  const adapter =
    (id: string, more: () => object) =>
    (n: number): Part =>
      ({ id: `${id}-${random(90)}-${n}`, ...more(), ...bought() }) as Part;
  const parts: Part[] = [
    ...some(8, gear("pinion", 10, 12)),
    ...some(8, gear("spur", 30, 25)),
    ...some(3, gear("gear", 22, 6)),
    ...some(
      2,
      (n) =>
        ({
          ...gear("spur", 30, 25)(n),
          id: `set-${n}`,
          is: "set",
          teeth: undefined,
          driver: 11 + random(6),
          driven: 30 + random(20),
        }) as Part,
    ),
    ...some(
      5,
      adapter("sleeve", () => ({ is: "sleeve", bore: pick(bores), outside: pick(bores) })),
    ),
    ...some(
      4,
      adapter("plate", () => ({ is: "plate", circles: [pick(holes), pick(holes)] })),
    ),
  ].map((part) => JSON.parse(JSON.stringify(part)) as Part);
  // One piece may sit in the other stage.
  const [first] = parts;
  if (first?.is === "pinion" && random(2))
    parts[0] = {
      ...first,
      teeth: other.driver,
      ...{ module: undefined, diametralPitch: undefined },
      ...pick([usual[0]!, { ...other, id: first.id, kind: undefined, driver: undefined, driven: undefined }]),
      stage: "other",
      status: "fitted",
    } as Part;
  return parts.map((part) => JSON.parse(JSON.stringify(part)) as Part);
}

/** A build with two stages on one axle or before the split, a shelf, a mount, and a range. */
export function shelfCase(seed: number): ShelfCase {
  const random = randomFrom(seed);
  const pick = <T>(list: readonly T[]): T => list[random(list.length)]!;
  const other = { id: "other", kind: "pair", driver: 12 + random(4), driven: 40, ...pick(pitches) };
  const parts = shelfOf(random, other);
  const per = pick(["vehicle", "axle", "wheel"]);
  const onAxle = random(2) > 0;
  const from = 8 + random(14);
  const mount = {
    stage: "primary",
    from: `${12 + random(12)}.${random(10)} mm`,
    to: `${25 + random(8)}.${random(10)} mm`,
    ...(random(2) && { opening: "0.05 mm", ...(random(2) && { openingTo: "0.1 mm" }) }),
    ...(random(3) && { shaft: pick(bores) }),
    ...(random(4) === 0 && { steps: ["4 mm"] }),
    ...(random(3) && { hubHoles: [pick(holes)] }),
    ...(random(2) && { drivenShaft: pick(bores) }),
  };
  const printed = random(3) === 0;
  const rest = printed
    ? { id: "rest", kind: "published", value: "2.6" }
    : { id: "rest", kind: "pair", driver: 10 + random(5), driven: 20 + random(15) };
  const set = random(6) === 0;
  const primary = { id: "primary", kind: "pair", driver: 15, driven: 62, ...pick(pitches), per, ...(set && { set }) };
  const data = {
    format: "meshwright-build/1",
    stages: onAxle ? [other] : [other, primary],
    outputs: [
      { id: "rear", wheels: 2, stages: onAxle ? [primary, rest] : [rest] },
      ...(random(2)
        ? [{ id: "front", wheels: 4, stages: [{ id: "front-ring", kind: "pair", driver: 10, driven: 21 }] }]
        : []),
    ],
    target: { from, to: from + 10 + random(25) },
    mounts: random(6) ? [mount] : [],
    parts,
  };
  const build = parseBuild(data);
  const before = over(ratio(other.driven), ratio(other.driver));
  const own: readonly [Ratio, Ratio] = printed
    ? [ratio(255, 100), ratio(265, 100)]
    : [ratio(rest.driven!, rest.driver!), ratio(rest.driven!, rest.driver!)];
  const rests: [Ratio, Ratio][] = [[times(before, own[0]), times(before, own[1])]];
  const front = build.outputs[1];
  if (front && !onAxle) rests.push([times(before, ratio(21, 10)), times(before, ratio(21, 10))]);
  const driven = onAxle || !front ? [2] : [2, 4];
  const pieces = per === "vehicle" ? 1 : per === "axle" ? driven.length : driven.reduce((a, b) => a + b);
  return { build, stage: "primary", pieces, rests };
}

/** A build whose primary pair and whose rear ring are chosen together, with the wheels of both axles. */
export interface TrainCase {
  readonly build: Build;
  /** What stands before and behind the chosen stages, at the rear and at the front. */
  readonly rests: readonly [rear: readonly [low: Ratio, high: Ratio], front: readonly [low: Ratio, high: Ratio]];
  readonly ahead: readonly [from: string, to: string];
  readonly wheels: readonly ("rear" | "front")[];
}

/** Two stages of one shelf, each on a mount of its own or on none. */
export function trainCase(seed: number): TrainCase {
  const random = randomFrom(seed + 77_777);
  const pick = <T>(list: readonly T[]): T => list[random(list.length)]!;
  const other = { id: "other", kind: "pair", driver: 12 + random(4), driven: 40, ...pick(pitches) };
  const tyres = [110, 114, 118, 122].slice(0, 1 + random(4)).map((size, n): Part => ({
    id: `tyre-${n}`,
    is: "wheel",
    diameter: `${size} mm`,
    ...(random(2) && { price: { amount: `${5 + random(4)}.20`, currency: "EUR" } }),
    ...(random(3) === 0 && { owned: random(5) }),
    ...(random(3) && { available: random(5) > 0 }),
  }));
  const mountOf = (stage: string) => ({
    stage,
    from: `${14 + random(8)}.${random(10)} mm`,
    to: `${25 + random(8)}.${random(10)} mm`,
    ...(random(3) && { shaft: pick(bores) }),
    ...(random(3) && { hubHoles: [pick(holes)] }),
    ...(random(2) && { drivenShaft: pick(bores) }),
  });
  const printed = random(3) === 0;
  const box = printed
    ? { id: "box", kind: "published", value: "1.5" }
    : { id: "box", kind: "pair", driver: 10, driven: 15 + random(9) };
  const from = 10 + random(12);
  const pair = (id: string) => {
    const set = random(8) === 0;
    return { id, kind: "pair", driver: 15, driven: 45, ...pick(pitches), ...(set && { set }) };
  };
  const wheel = (size: number) => (random(6) ? { wheel: { diameter: `${size} mm` } } : {});
  const build = parseBuild({
    format: "meshwright-build/1",
    stages: [other, pair("primary")],
    outputs: [
      { id: "rear", ...wheel(120), stages: [pair("rear-ring")] },
      { id: "front", ...wheel(124), stages: [box] },
    ],
    target: { from, to: from + 8 + random(12), ...(random(2) && { output: "rear" }) },
    mounts: ["primary", "rear-ring"].filter(() => random(3)).map(mountOf),
    parts: [...shelfOf(random, other), ...tyres],
  });
  const before = ratio(other.driven, other.driver);
  const own: readonly [Ratio, Ratio] = printed
    ? [ratio(145, 100), ratio(155, 100)]
    : [ratio(box.driven!, 10), ratio(box.driven!, 10)];
  return {
    build,
    rests: [
      [before, before],
      [times(before, own[0]), times(before, own[1])],
    ],
    ahead: [pick(["-0.5", "-0.2", "0"]), pick(["0.1", "0.5", "2"])],
    wheels: (["rear", "front"] as const).filter(() => random(2)),
  };
}
