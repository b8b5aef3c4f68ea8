// Counts what searches do between two pauses: how often each block of code runs, as the engine itself counts it.
// node steps.js <bundle of calc>: one line of JSON, by the name of the search.
import { Session } from "node:inspector";
import { pathToFileURL } from "node:url";

const session = new Session();
session.connect();
function ask(method, options) {
  let answer;
  session.post(method, options, (error, result) => {
    if (error) throw new Error(error.message);
    answer = result;
  });
  return answer;
}
ask("Profiler.enable");
ask("Profiler.startPreciseCoverage", { callCount: true, detailed: true });

const bundle = pathToFileURL(process.argv[2]).href;
const { findPairs, findTrains, nearMisses } = await import(bundle);

/** Blocks run since the last call. */
const runs = () =>
  ask("Profiler.takePreciseCoverage")
    .result.filter(({ url }) => url === bundle)
    .flatMap(({ functions }) => functions.flatMap(({ ranges }) => ranges))
    .reduce((sum, { count }) => sum + count, 0);

const counts = (from, to) => Array.from({ length: to - from + 1 }, (_, n) => from + n);
const stages = (number, from, to) =>
  counts(1, number).map((n) => ({ id: `s${n}`, drivers: counts(from, to), drivens: counts(from, to) }));
const sets = (name, number, of) =>
  counts(1, number).map((n) => ({ id: `${name}${String(n).padStart(4, "0")}`, is: "set", ...of(n) }));
const odd = (n) => ({ driver: 100 + ((n * 7919) % 900), driven: 500 + ((n * 104_729) % 9000) });
const equal = () => ({ driver: 10, driven: 20 });
const gears = (is, number, first, range) =>
  counts(1, number).map((n) => ({
    id: `${is}${n}`,
    is,
    teeth: first + ((n * 7919) % range),
    ...[{ module: "0.8" }, { diametralPitch: 32 }][n % 2],
    bore: n % 3 ? "5 mm" : "3.175 mm",
    price: { amount: `${n % 7}.40`, currency: "EUR" },
  }));
const shelf = {
  drivers: gears("pinion", 600, 10, 25),
  drivens: gears("spur", 800, 40, 61),
  outputs: [{ id: "rear", rest: "4025/384", from: 38, to: 46 }],
  mount: { from: "24 mm", to: "36 mm", shaft: "5 mm" },
};
const total = (from, to) => [{ id: "total", from, to }];

const searches = {
  "whole numbers met in the middle": () => findTrains({ stages: stages(3, 9, 40), outputs: total(20, "20.001") }),
  "a tie of millions": () => findTrains({ stages: stages(3, 1, 40), outputs: total("0.99999", "1.00001") }),
  "long lists of sets": () =>
    findTrains({
      stages: ["a", "b", "c"].map((id) => ({ id, sets: sets(id, 400, odd) })),
      outputs: total(100, "100.01"),
    }),
  "axles apart": () =>
    findTrains({
      stages: ["a", "b"].map((id) => ({ id, on: [id], sets: sets(id, 200, odd) })),
      outputs: ["a", "b"].map((id) => ({ id, from: 1, to: 40 })),
    }),
  "all of them equal": () =>
    findTrains({ stages: ["a", "b"].map((id) => ({ id, sets: sets(id, 220, equal) })), outputs: total(1, 40) }),
  "fractions beyond plain numbers": () =>
    findTrains({
      stages: ["a", "b"].map((id) => ({ id, sets: sets(id, 300, odd) })),
      outputs: total("10.000000000001", "11"),
    }),
  "put into another order": () => findTrains({ stages: stages(2, 9, 40), outputs: total(2, 3), order: "cheapest" }),
  pairs: () => findPairs(shelf),
  "pairs by price": () => findPairs({ ...shelf, order: "cheapest" }),
  "near misses": () => nearMisses(shelf),
  "bare counts": () => findPairs({ drivers: counts(1, 300), drivens: counts(1, 300), outputs: total("0.5", 2) }),
};

const most = 500;
const found = {};
for (const [name, search] of Object.entries(searches)) {
  runs();
  const work = [];
  for (const _ of search()) if (work.push(runs()) >= most) break;
  found[name] = { steps: work.length, worst: Math.max(...work), all: work.reduce((sum, one) => sum + one, 0) };
}
process.stdout.write(JSON.stringify(found));
