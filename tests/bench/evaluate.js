// How fast a build is evaluated and read. What is compared is measured in turns within one run, and the best turn counts:
// whatever else the machine does only ever adds to a turn.
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

/** The best of several turns, in runs a second. */
function perSecond(act, milliseconds = 150, turns = 7) {
  let best = 0;
  for (let turn = 0; turn < turns; turn++) {
    let runs = 0;
    const start = performance.now();
    let now = start;
    while (now - start < milliseconds) {
      for (let n = 0; n < 50; n++) act();
      runs += 50;
      now = performance.now();
    }
    best = Math.max(best, (runs / (now - start)) * 1000);
  }
  return best;
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

/** The shortest of several times of one run, in milliseconds. */
function shortest(act, turns = 9) {
  let best = Infinity;
  for (let turn = 0; turn < turns; turn++) {
    const start = performance.now();
    act();
    best = Math.min(best, performance.now() - start);
  }
  return best;
}

/** The exponent of growth: the slope of time over size, both as logarithms, by least squares. */
function growth(sizes, make) {
  const points = sizes.map((size) => [Math.log(size), Math.log(shortest(make(size)))]);
  const mean = (n) => points.reduce((total, point) => total + point[n], 0) / points.length;
  const [x, y] = [mean(0), mean(1)];
  const over = points.reduce((total, point) => total + (point[0] - x) * (point[1] - y), 0);
  return over / points.reduce((total, point) => total + (point[0] - x) ** 2, 0);
}

export async function run() {
  const sizes = [625, 1250, 2500, 5000, 10_000];
  const changes = { "primary.driver": 17, "primary.driven": 66, "row.teeth.1": 30 };
  const link = linkOf(build, changes);
  const read = perSecond(() => use(readBuild(text).build), 150, 5);
  const figures = {
    evaluate_totals_per_second: perSecond(totals),
    evaluate_all_per_second: perSecond(all),
    evaluate_growth: growth(sizes, (size) => {
      const { build: made } = readBuild(long(size));
      return () => use(evaluate(made).outputs[0].reduction.factor.numerator);
    }),
    read_build_per_second: read,
    read_build_vs_parse: perSecond(() => use(JSON.parse(text)), 150, 5) / read,
    read_build_growth: growth(sizes, (size) => {
      const json = JSON.stringify(long(size));
      return () => use(readBuild(json).build);
    }),
    apply_changes_per_second: perSecond(() => use(applyChanges(build, changes).build), 100, 3),
    changes_from_link_per_second: perSecond(() => use(changesFrom(link, build)), 100, 3),
  };
  if (sum === 0) throw new Error("Nothing was measured.");
  return figures;
}
