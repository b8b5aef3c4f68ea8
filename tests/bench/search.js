// How fast pairs and trains are found, with a brute force in doubles beside it as the yardstick.
import { execFileSync } from "node:child_process";
import { performance } from "node:perf_hooks";

const search = new URL("../../packages/calc/dist/search/index.js", import.meta.url).href;

const counts = (from, to) => Array.from({ length: to - from + 1 }, (_, n) => from + n);

/** So many stages of free counts, for totals within 0.1 % of `middle`: half a thousandth either way. */
export const stagesOf = (number, from, to, middle) => ({
  stages: Array.from({ length: number }, (_, n) => ({
    id: `stage-${n}`,
    drivers: counts(from, to),
    drivens: counts(from, to),
  })),
  outputs: [{ id: "total", from: (middle * 0.9995).toFixed(6), to: (middle * 1.0005).toFixed(6) }],
});

/** Until all hits are found and counted: what is left is to put them in order and write them out. */
export function countOf(batches) {
  for (const { count } of batches) if (count !== undefined) return count;
}

/** The first so many, in order. */
export function firstOf(batches, number) {
  const found = [];
  for (const batch of batches) {
    for (const one of batch.found) found.push(one);
    if (found.length >= number) break;
  }
  return found.slice(0, number);
}

const median = (values) => [...values].sort((a, b) => a - b)[values.length >> 1];

function timed(work) {
  const start = performance.now();
  work();
  return performance.now() - start;
}

const repeated = (times, work) => median(Array.from({ length: times }, (_, n) => timed(() => work(n))));

/** The first search of a fresh process. */
function cold() {
  const code = `
    import { findTrains } from ${JSON.stringify(search)};
    import { stagesOf, countOf } from ${JSON.stringify(import.meta.url)};
    const question = stagesOf(2, 8, 120, 9.37);
    const start = performance.now();
    countOf(findTrains(question));
    process.stdout.write(String(performance.now() - start));`;
  const once = () => Number(execFileSync(process.execPath, ["--input-type=module", "-e", code], { encoding: "utf8" }));
  return median(Array.from({ length: 7 }, once));
}

/** All four counts in four loops, in doubles. */
function twoStageInDoubles(list, low, high) {
  let hits = 0;
  for (const a of list)
    for (const b of list)
      for (const c of list) {
        const part = b / a / c;
        for (const d of list) {
          const ratio = part * d;
          if (ratio >= low && ratio <= high) hits++;
        }
      }
  return hits;
}

/** 40 pinions, 60 spurs, 12 sets and 6 wheels for each axle: 12 million combinations. */
export function joint() {
  const sets = (first) =>
    counts(0, 11).map((n) => ({ id: `set-${first}-${n}`, is: "set", driver: first + (n % 4), driven: 31 + n }));
  const wheels = (first) =>
    counts(0, 5).map((n) => ({ id: `wheel-${n}`, is: "wheel", diameter: `${first + 2 * n} mm` }));
  const range = { from: 38, to: 46 };
  return {
    stages: [
      { id: "primary", drivers: counts(9, 48), drivens: counts(40, 99) },
      { id: "front-ring", on: ["front"], sets: sets(10) },
      { id: "rear-ring", on: ["rear"], sets: sets(9) },
    ],
    outputs: [
      { id: "front", rest: "11/3", ...range, wheels: wheels(116) },
      { id: "rear", rest: "115/32", ...range, wheels: wheels(112) },
    ],
    compare: { of: "front", with: "rear", from: 0, to: "0.02" },
  };
}

function jointInDoubles({ stages, outputs, compare }) {
  const [primary, front, rear] = stages;
  const [f, r] = outputs.map(({ rest }) => rest.split("/").reduce((a, b) => a / b));
  const [frontWheels, rearWheels] = outputs.map(({ wheels }) => wheels.map(({ diameter }) => parseFloat(diameter)));
  let hits = 0;
  for (const driver of primary.drivers)
    for (const driven of primary.drivens)
      for (const one of front.sets) {
        const frontTotal = (((driven / driver) * f) / one.driver) * one.driven;
        for (const other of rear.sets) {
          const rearTotal = (((driven / driver) * r) / other.driver) * other.driven;
          for (const frontWheel of frontWheels)
            for (const rearWheel of rearWheels) {
              const ahead = (frontWheel * rearTotal) / (rearWheel * frontTotal) - 1;
              if (
                frontTotal >= 38 &&
                frontTotal <= 46 &&
                rearTotal >= 38 &&
                rearTotal <= 46 &&
                ahead >= compare.from &&
                ahead <= Number(compare.to)
              )
                hits++;
            }
        }
      }
  return hits;
}

/** 10,000 parts in six pitches, with bores and hub holes, for a slot and a shaft. */
export function manyParts() {
  const pitches = [
    { module: "0.8" },
    { diametralPitch: 32 },
    { module: "0.6" },
    { diametralPitch: 48 },
    { module: 1 },
    { module: "0.5" },
  ];
  const bores = ["5 mm", "3.175 mm", "5 mm", "4 mm", "5 mm"];
  const gear = (n, is, first, range) => ({
    is,
    id: `part-${String(n).padStart(5, "0")}`,
    teeth: first + ((n * 7919) % range),
    ...pitches[n % 6],
  });
  const mount = { from: "24 mm", to: "36 mm", shaft: "5 mm", hubHoles: [{ count: 4, diameter: "20 mm" }] };
  return {
    drivers: counts(0, 3999).map((n) => ({ ...gear(n, "pinion", 10, 25), bore: bores[n % 5] })),
    drivens: counts(4000, 9999).map((n) => ({
      ...gear(n, "spur", 40, 61),
      circles: [{ count: 4, diameter: n % 3 ? "20 mm" : "24 mm" }],
    })),
    outputs: [{ id: "rear", rest: "4025/384", from: 38, to: 46 }],
    mount,
  };
}

/** Three stages of 40 parts each on mounts of their own, for the ranges of two axles and the lead of one over the other. */
export function trainOfParts() {
  const pitches = [{ module: "0.8" }, { module: "0.8" }, { diametralPitch: 32 }, { diametralPitch: 48 }];
  const gear = (stage, n) => ({
    id: `${stage}-${n}`,
    is: n % 2 ? "spur" : "pinion",
    teeth: n % 2 ? 36 + ((n * 7) % 31) : 11 + ((n * 5) % 19),
    ...pitches[(n >> 1) % 4],
    bore: n % 6 ? "5 mm" : "1/8 in",
    circles: [{ count: 4, diameter: n % 5 ? "20 mm" : "24 mm" }],
    price: { amount: `${3 + (n % 9)}.${n % 10}0`, currency: "EUR" },
    available: true,
  });
  const adapters = [
    { id: "sleeve", is: "sleeve", bore: "1/8 in", outside: "5 mm", available: true },
    { id: "plate", is: "plate", circles: [20, 24].map((size) => ({ count: 4, diameter: `${size} mm` })) },
  ];
  const mount = (from, to) => ({
    from: `${from} mm`,
    to: `${to} mm`,
    opening: "0.05 mm",
    shaft: "1/8 in",
    hubHoles: [{ count: 4, diameter: "20 mm" }],
  });
  const stage = (id, on, from, to) => {
    const parts = counts(0, 39).map((n) => gear(id, n));
    const of = (kind) => parts.filter(({ is }) => is === kind);
    return { id, ...on, drivers: of("pinion"), drivens: of("spur"), mount: mount(from, to), adapters };
  };
  return {
    stages: [
      stage("primary", {}, 22, 36),
      stage("front", { on: ["front"] }, 20, 34),
      stage("rear", { on: ["rear"] }, 20, 34),
    ],
    outputs: [
      { id: "front", rest: "11/3", from: 24, to: 46 },
      { id: "rear", rest: "115/32", from: 24, to: 46 },
    ],
    compare: { of: "front", with: "rear", from: 0, to: "0.05" },
  };
}

/** The slope of the line through the logarithms. */
function exponent(points) {
  const [xs, ys] = [0, 1].map((n) => points.map((point) => Math.log(point[n])));
  const mean = (values) => values.reduce((a, b) => a + b) / values.length;
  const [x, y] = [mean(xs), mean(ys)];
  const sum = (make) => xs.reduce((total, _, n) => total + make(n), 0);
  return sum((n) => (xs[n] - x) * (ys[n] - y)) / sum((n) => (xs[n] - x) ** 2);
}

export async function run() {
  const { findPairs, findTrains } = await import(search);
  const figures = { two_stage_cold_ms: cold() };

  const middles = counts(0, 40).map((n) => 5 + n * 0.37);
  const two = middles.map((middle) => stagesOf(2, 8, 120, middle));
  for (const question of two) countOf(findTrains(question));
  figures.two_stage_warm_ms = repeated(two.length, (n) => countOf(findTrains(two[n])));
  figures.two_stage_first_1000_ms = repeated(20, (n) => firstOf(findTrains(two[n]), 1000));
  const [{ outputs }] = [stagesOf(2, 8, 120, 9.37)];
  let inDoubles;
  figures.two_stage_doubles_ms = timed(
    () => (inDoubles = twoStageInDoubles(counts(8, 120), Number(outputs[0].from), Number(outputs[0].to))),
  );
  figures.two_stage_hits = countOf(findTrains(stagesOf(2, 8, 120, 9.37)));
  figures.two_stage_hits_doubles = inDoubles;

  figures.three_stage_ms = repeated(9, (n) => firstOf(findTrains(stagesOf(3, 9, 40, 20 + n * 0.37)), 1000));

  const question = joint();
  for (let n = 0; n < 20; n++) firstOf(findTrains(question), 1000);
  figures.joint_ms = repeated(31, () => firstOf(findTrains(question), 1000));
  figures.joint_hits = countOf(findTrains(question));
  let jointHits;
  figures.joint_doubles_ms = timed(() => (jointHits = jointInDoubles(question)));
  figures.joint_hits_doubles = jointHits;

  const parts = trainOfParts();
  figures.train_parts_ms = repeated(31, () => firstOf(findTrains(parts), 1000));
  figures.train_parts_hits = countOf(findTrains(parts));

  const shelf = manyParts();
  figures.parts_first_ms = repeated(9, () => firstOf(findPairs(shelf), 1));
  let all;
  figures.parts_all_ms = repeated(5, () => (all = firstOf(findPairs(shelf), Infinity)));
  figures.parts_hits = all.length;

  // Time against the number of combinations: a brute force grows with exponent 1.
  const sizes = [28, 40, 57, 80, 113, 160, 226];
  const points = sizes.map((size) => {
    const asked = stagesOf(2, 8, 7 + size, 9.37);
    return [size ** 4, repeated(9, () => countOf(findTrains(asked)))];
  });
  figures.search_growth = exponent(points);
  return figures;
}
