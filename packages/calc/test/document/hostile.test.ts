import { describe, expect, it } from "vitest";
import { buildFromAttributes, buildFromLink, changesFrom, linkOf, readBuild } from "../../src/document/index.js";
import { evaluate } from "../../src/evaluate/index.js";
import { document, pair, read } from "../make.js";

/** Processor time in milliseconds: what else the machine does at the time is not counted. */
function spent(act: () => unknown): number {
  const start = process.cpuUsage();
  act();
  const { user, system } = process.cpuUsage(start);
  return (user + system) / 1000;
}

/** The first turns run code that has never run, and some turns sweep up after others: of nine, one does neither. */
const least = (act: () => unknown, turns = 9): number => Math.min(...Array.from({ length: turns }, () => spent(act)));

const stages = (count: number) =>
  Array.from({ length: count }, (_, n) => ({
    id: `s${n}`,
    ...pair(`s${n}`, 7 + ((n * 37) % 90), 11 + ((n * 53) % 120)),
    label: `Stage ${n} of many, in a row`,
    module: "0.8",
  }));
const long = (count: number) => document([], { rear: stages(count) });
const printedBoxes = (count: number) =>
  document([], { rear: stages(count).map(({ id }) => ({ id, kind: "published", value: "19:1" })) });

/** Ratios that stay of one size, however many there are. */
const ratios = (count: number) =>
  Array.from({ length: count }, (_, n) => ({
    id: `s${n}`,
    kind: "published",
    value: n % 2 ? `0.${50 + (n % 37)}` : `1.${10 + (n % 89)}`,
    group: `g${n % 3}`,
  }));

const opening = '{"format":"meshwright-build/1",';
const each = (count: number, text: (n: number) => string) => Array.from({ length: count }, (_, n) => text(n)).join();

describe("a megabyte of anything", () => {
  const ordinary = JSON.stringify(long(9000));
  // A yardstick that this machine makes while the test runs: taking a megabyte apart and putting it together again.
  const unit = () => least(() => JSON.stringify(JSON.parse(ordinary)));
  // Ten of them are about the 50 ms that a page can spare, on a small machine with nothing else to do.
  const limit = 10 * unit();
  const hostile: Record<string, string> = {
    ordinary,
    "deep lists": "[".repeat(1e6),
    "deep objects": '{"a":'.repeat(2e5),
    "deep and closed": opening + `"x-a":${"[".repeat(240)}${"]".repeat(240)}}`.padEnd(1e6, " "),
    "empty lists": `[${"[],".repeat(333_000)}[]]`,
    "one long text": `${opening}"title":"${"x".repeat(1e6)}"}`,
    escapes: `${opening}"title":"${"\\u0041".repeat(160_000)}"}`,
    "a text without end": `"${"x".repeat(1e6)}`,
    digits: "1".repeat(1e6),
    "a fraction of digits": `${opening}"outputs":[{"id":"rear","stages":[{"id":"a","kind":"published","value":"${"1".repeat(1e6)}"}]}]}`,
    blanks: " ".repeat(1e6),
    lines: "\n".repeat(1e6) + "x",
    "unknown keys": `{${each(90_000, (n) => `"k${n}":1`)}}`,
    "carried keys": `${opening}${each(80_000, (n) => `"x-${n}":1`)}}`,
    "one key again and again": `{${each(150_000, () => '"k":1')}}`,
    "wrong counts": ordinary.replace(/"driver":\d+/g, '"driver":0'),
    warnings: JSON.stringify(printedBoxes(10_000)),
    "one id": ordinary.replace(/"id":"s\d+"/g, '"id":"s"'),
    "many addresses": JSON.stringify({
      ...long(3000),
      alternatives: Array.from({ length: 100 }, (_, n) => ({
        id: `a${n}`,
        changes: Object.fromEntries(stages(200).map(({ id }) => [`${id}.driver`, 12])),
      })),
    }),
    "alternatives that have to be made whole": JSON.stringify({
      ...long(3000),
      alternatives: Array.from({ length: 100 }, (_, n) => ({ id: `a${n}`, changes: { "rear.from": null } })),
    }),
    "revisions in a row": JSON.stringify({
      ...long(3000),
      revisions: Array.from({ length: 100 }, (_, n) => ({
        number: n + 1,
        back: [{ set: { [`s${n}`]: { driver: n + 1 } } }],
      })),
    }),
    "one thing after the other": JSON.stringify(
      document([], {
        rear: stages(9000).map(({ id }, n) => ({ id, kind: "published", value: "1.5", sameAs: `s${n + 1}` })),
      }),
    ),
    "the same thing in a ring": JSON.stringify(
      document([], {
        rear: stages(9000).map(({ id }, n) => ({ id, kind: "published", value: "1.5", sameAs: `s${(n + 1) % 9000}` })),
      }),
    ),
    "fitted parts that are not there": JSON.stringify({
      ...document([], { rear: stages(2000).map((stage) => ({ ...stage, fitted: ["none", "nome", "nine"] })) }),
      parts: Array.from({ length: 2000 }, (_, n) => ({ id: `p${n}`, is: "gear", teeth: 9 })),
    }),
    "builds in a build": JSON.stringify({
      ...long(400),
      references: Array.from({ length: 20 }, (_, n) => ({ id: `r${n}`, build: long(400) })),
    }),
    "branches in a row": JSON.stringify({
      ...document([], { rear: { from: "b99" } }),
      branches: Array.from({ length: 100 }, (_, n) => ({ id: `b${n}`, ...(n && { from: `b${n - 1}` }), stages: [] })),
    }),
    "branches in a ring": JSON.stringify({
      ...document([], { rear: { from: "b99" } }),
      branches: Array.from({ length: 100 }, (_, n) => ({ id: `b${n}`, from: `b${(n + 1) % 100}`, stages: [] })),
    }),
  };

  it.each(Object.keys(hostile))("%s is read or refused about as fast as JSON is", (name) => {
    const json = hostile[name]!;
    const yardstick = unit();
    // Of this text JSON alone makes what no reader can undercut: for lists without an end, seven times the yardstick.
    const alone = least(() => {
      try {
        JSON.parse(json);
      } catch {
        // It is no JSON.
      }
    });
    expect(least(() => readBuild(json)) - alone, `beside JSON's own ${alone} ms, against ${yardstick} ms`).toBeLessThan(
      10 * yardstick,
    );
  });

  it("is no build by link or by attribute either, no slower", () => {
    const build = read(document([], { rear: [pair("a", 1, 2)] }));
    const texts = [
      "x".repeat(1e6),
      linkOf(build, { "a.driver": 5 }).repeat(1e5),
      "1c" + "A".repeat(1e6),
      "1b" + "_".repeat(1e6),
      "%".repeat(1e6),
    ];
    for (const text of texts) {
      expect(least(() => changesFrom(text, build))).toBeLessThan(limit);
      expect(least(() => buildFromLink(text))).toBeLessThan(limit);
    }
    for (const text of [
      "x".repeat(1e6),
      ":".repeat(1e6),
      ";".repeat(1e6),
      " ".repeat(1e6),
      "1 to 2;".repeat(1e4),
      ",".repeat(1e6),
      "a:".repeat(5e5),
      "–".repeat(1e6),
      "–".repeat(3e5),
      ";".repeat(3e5),
      "a:".repeat(400) + ";".repeat(1e5),
    ])
      for (const name of ["stages", "target", "title", "rear", "rear-wheel"])
        expect(
          least(() => buildFromAttributes({ [name]: text })),
          `${name}=${text.slice(0, 9)}…`,
        ).toBeLessThan(limit);
  });
});

describe("growth of the time with the size", () => {
  const sizes = [640, 1280, 2560, 5120];

  /** The exponent: the slope of time over size, both as logarithms, by least squares. */
  function exponent(make: (size: number) => () => unknown): number {
    const acts = sizes.map(make);
    const largest = acts.at(-1)!;
    largest();
    // What is over in no time is done again and again, the smaller the more often, so that each turn has something to measure.
    const again = Math.max(1, Math.ceil(10 / spent(largest)));
    const best = sizes.map(() => Infinity);
    // Until four turns in a row brought nothing better: what else the machine does makes a turn longer, never shorter.
    for (let turn = 0, idle = 0; turn < 30 && idle < 4; turn++) {
      idle++;
      acts.forEach((act, n) => {
        const times = again * (sizes.at(-1)! / sizes[n]!);
        const all = spent(() => {
          for (let time = 0; time < times; time++) act();
        });
        if (all / times < 0.99 * best[n]!) idle = 0;
        best[n] = Math.min(best[n]!, all / times);
      });
    }
    const points = sizes.map((size, n) => [Math.log(size), Math.log(best[n]!)] as const);
    const mean = (n: 0 | 1) => points.reduce((sum, point) => sum + point[n], 0) / points.length;
    const [x, y] = [mean(0), mean(1)];
    return (
      points.reduce((sum, point) => sum + (point[0] - x) * (point[1] - y), 0) /
      points.reduce((sum, point) => sum + (point[0] - x) ** 2, 0)
    );
  }

  /** A build in which one count of every second stage is another, and the link to it. */
  const changed = (size: number) => {
    const build = read(long(size));
    const halves = stages(size).filter((_, n) => n % 2);
    const changes = Object.fromEntries(halves.map(({ id }, n) => [`${id}.driver`, 5 + (n % 90)]));
    return { build, changes, link: linkOf(build, changes) };
  };

  it("is seen where it is known to be quadratic", () => {
    const pairs = (size: number) => () => {
      let count = 0;
      for (let a = 0; a < size; a++) for (let b = 0; b < size / 8; b++) count += (a ^ b) & 1;
      return count;
    };
    expect(exponent(pairs)).toBeGreaterThan(1.7);
  });

  it.each<[string, (size: number) => () => unknown]>([
    [
      "parsing and reading",
      (size) => {
        const json = JSON.stringify(long(size));
        return () => readBuild(json);
      },
    ],
    [
      "refusing",
      (size) => {
        const json = JSON.stringify(long(size)).replace(/"driver":\d+/g, '"driver":0');
        return () => readBuild(json);
      },
    ],
    [
      "evaluating",
      (size) => {
        const build = read(long(size));
        return () => evaluate(build).outputs[0]!.reduction!.factor.numerator;
      },
    ],
    [
      "going through the steps",
      (size) => {
        const build = read(document([], { rear: stages(size).map((stage, n) => ({ ...stage, group: `g${n % 3}` })) }));
        return () => {
          const rear = evaluate(build).outputs[0]!;
          return [
            rear.steps.map(({ reduction, turns }) => [reduction.bounds, turns]),
            rear.groups,
            rear.steps.at(-1)!.running,
          ];
        };
      },
    ],
    [
      "evaluating printed ratios",
      (size) => {
        const json = document([], { front: [], rear: ratios(size) }, { target: { from: 1, to: 2 } });
        const build = read(json);
        return () => {
          const evaluation = evaluate(build);
          const rear = evaluation.output("rear")!;
          const differences = (["with", "of", "mean"] as const).map((base) =>
            evaluation.compare()!.difference("gears", base),
          );
          return [rear.bounds, rear.standing, rear.groups.map(({ reduction }) => reduction.bounds), differences];
        };
      },
    ],
    [
      "trying alternatives",
      (size) => {
        const changes = Object.fromEntries(stages(size).map(({ id }) => [`${id}.driver`, 12]));
        const json = JSON.stringify({ ...long(size), alternatives: [{ id: "a", changes }] });
        return () => readBuild(json);
      },
    ],
    [
      "attributes",
      (size) => {
        const rear = Array.from({ length: size }, (_, n) => `Stage ${n}: 12 to ${n + 1}`).join("; ");
        return () => buildFromAttributes({ rear });
      },
    ],
    [
      "making a link",
      (size) => {
        const { build, changes } = changed(size);
        return () => linkOf(build, changes);
      },
    ],
    [
      "opening a link",
      (size) => {
        const { build, link } = changed(size);
        return () => changesFrom(link, build);
      },
    ],
    [
      "opening a link of which nothing applies any more",
      (size) => {
        const { build, link } = changed(size);
        const stages = build.outputs[0]!.stages.map((stage) => ({ ...stage, module: "1" }));
        const later = read(document([], { rear: stages as never }));
        return () => changesFrom(link, later);
      },
    ],
  ])("of %s is at most 1.2", (_, make) => {
    expect(exponent(make)).toBeLessThan(1.2);
  });
});
