// How fast a build is evaluated and read. The best of many turns counts: whatever else the machine does only ever adds.
import { readFileSync } from "node:fs";
import { applyChanges, changesFrom, evaluate, linkOf, readBuild } from "../../packages/calc/dist/index.js";

const text = readFileSync(new URL("../../seeds/limpet.json", import.meta.url), "utf8");
const { build } = readBuild(text);

/** What is read is added up, so that nothing that is measured can be left out as unused. */
let sum = 0;
const use = (value) => {
  if (value !== undefined) sum += 1;
};

function totals() {
  const { outputs } = evaluate(build);
  sum += Number(outputs[0].reduction.factor.numerator) + Number(outputs[1].reduction.factor.denominator);
}

/** Everything that an evaluation has to say, worked out; fractions are left unreduced, as nobody has looked at their digits. */
function all() {
  const evaluation = evaluate(build);
  for (const output of evaluation.outputs) {
    use(output.reduction.factor);
    use(output.bounds.low);
    use(output.turns);
    use(output.standing);
    use(output.travel.factor);
    for (const step of output.steps) {
      use(step.reduction.factor);
      use(step.running.factor);
      use(step.turns);
    }
    for (const group of output.groups) use(group.reduction.factor);
  }
  const comparison = evaluation.compare();
  for (const scope of ["gears", "tyres"])
    for (const base of ["with", "of", "mean"]) use(comparison.difference(scope, base).low);
  use(comparison.sameWay);
  use(comparison.arithmeticMean.low);
  use(comparison.harmonicMean.low);
  use(evaluation.findings.length);
}

/**
 * Runs a second, by the best of many turns of a few milliseconds each: as short as they are, some of them have the
 * processor to themselves even where other work goes on.
 */
function perSecond(act, seconds = 1) {
  const timed = (runs) => {
    const start = performance.now();
    for (let run = 0; run < runs; run++) act();
    return performance.now() - start;
  };
  const until = (end) => performance.now() < end;
  for (const end = performance.now() + 400; until(end);) act();
  let runs = 1;
  while (timed(runs) < 3) runs *= 2;
  let best = Infinity;
  for (const end = performance.now() + seconds * 1000; until(end);) best = Math.min(best, timed(runs) / runs);
  return 1000 / best;
}

/** A document with so many stages in one output. */
const long = (stages) => ({
  format: "meshwright-build/1",
  outputs: [
    {
      id: "rear",
      stages: Array.from({ length: stages }, (_, n) => ({
        id: `s${n}`,
        kind: "pair",
        driver: 7 + ((n * 37) % 90),
        driven: 11 + ((n * 53) % 120),
      })),
    },
  ],
});

/**
 * The exponent of growth: the slope of time over size, both as logarithms, by least squares. Each turn does the same amount
 * of work at every size, small ones more often, so that collecting garbage costs each its share.
 */
function growth(sizes, make, turns = 15) {
  const acts = sizes.map(make);
  const best = sizes.map(() => Infinity);
  for (let turn = 0; turn < turns; turn++)
    acts.forEach((act, n) => {
      const runs = sizes.at(-1) / sizes[n];
      const start = performance.now();
      for (let run = 0; run < runs; run++) act();
      best[n] = Math.min(best[n], (performance.now() - start) / runs);
    });
  const points = sizes.map((size, n) => [Math.log(size), Math.log(best[n])]);
  const mean = (n) => points.reduce((total, point) => total + point[n], 0) / points.length;
  const [x, y] = [mean(0), mean(1)];
  const over = points.reduce((total, point) => total + (point[0] - x) * (point[1] - y), 0);
  return over / points.reduce((total, point) => total + (point[0] - x) ** 2, 0);
}

export async function run() {
  const sizes = [625, 1250, 2500, 5000, 10_000];
  const changes = { "primary.driver": 17, "primary.driven": 66, "row.teeth.1": 30 };
  const link = linkOf(build, changes);
  const read = perSecond(() => use(readBuild(text).build));
  const figures = {
    evaluate_totals_per_second: perSecond(totals),
    evaluate_all_per_second: perSecond(all),
    evaluate_growth: growth(sizes, (size) => {
      const { build: made } = readBuild(long(size));
      return () => use(evaluate(made).outputs[0].reduction.factor.numerator);
    }),
    read_build_per_second: read,
    read_build_vs_parse: perSecond(() => use(JSON.parse(text))) / read,
    read_build_growth: growth(sizes, (size) => {
      const json = JSON.stringify(long(size));
      return () => use(readBuild(json).build);
    }),
    apply_changes_per_second: perSecond(() => use(applyChanges(build, changes).build), 0.5),
    changes_from_link_per_second: perSecond(() => use(changesFrom(link, build)), 0.5),
  };
  if (sum === 0) throw new Error("Nothing was measured.");
  return figures;
}
