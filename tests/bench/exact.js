// Fractions against plain numbers, fraction.js, decimal.js and big.js. Every figure is a quotient of times that were taken
// by turns in one run, the median of many short rounds, so that what slows the machine for a while slows all alike.
import { getHeapStatistics } from "node:v8";
import { isMainThread, parentPort, Worker, workerData } from "node:worker_threads";
import Big from "big.js";
import { Decimal } from "decimal.js";
import Fraction from "fraction.js";
import { rational, ratioOf } from "../../packages/calc/dist/exact/index.js";

const count = 500;
let seed = 20261125;
/** The same whole numbers each time. */
function between(least, most) {
  seed = (seed * 48271) % 2147483647;
  return least + (seed % (most - least + 1));
}
const list = (make) => Array.from({ length: count }, make);

/** Six stages each, as an application holds them. */
const trains = list(() => Array.from({ length: 6 }, () => ({ driven: between(14, 63), driver: between(9, 35) })));
const texts = list((_, index) => (between(100, 9999) / 10 ** (index % 4)).toString());
const fractions = trains.map(([{ driven, driver }]) => `${driven}/${driver}`);

/** What has been computed goes in here, lest it be left out. Each contestant has a loop of its own: shared, it would be nobody's. */
let sink = 0;

/** Nanoseconds an item, of each contestant by turns, round after round. */
function race(contestants, rounds = 100) {
  const names = Object.keys(contestants);
  const times = Object.fromEntries(names.map((name) => [name, []]));
  // So often that a turn takes about a quarter of a millisecond.
  const often = {};
  for (const name of names) {
    const start = performance.now();
    for (let run = 0; run < 200; run++) contestants[name]();
    often[name] = Math.max(1, Math.round(50 / (performance.now() - start)));
  }
  for (let round = 0; round < rounds; round++) {
    for (const name of round % 2 ? names : [...names].reverse()) {
      const start = performance.now();
      for (let run = 0; run < often[name]; run++) contestants[name]();
      times[name].push(((performance.now() - start) * 1e6) / often[name] / count);
    }
  }
  return times;
}

const median = (values) => [...values].sort((a, b) => a - b)[values.length >> 1];
/** How many times as long the one takes, round by round. */
const quotient = (times, one, other) => median(times[one].map((time, round) => time / times[other][round]));

const chain = {
  plain() {
    for (const train of trains) {
      let product = 1;
      for (const { driven, driver } of train) product *= driven / driver;
      sink += product;
    }
  },
  ours() {
    for (const train of trains) {
      let product = rational(1);
      for (const { driven, driver } of train) product = product.times(ratioOf(driven, driver));
      sink += product.toNumber();
    }
  },
  fraction() {
    for (const train of trains) {
      let product = new Fraction(1);
      for (const { driven, driver } of train) product = product.mul(driven, driver);
      sink += product.valueOf();
    }
  },
};

const made = {
  plain: ({ driven, driver }) => driven / driver,
  ours: ({ driven, driver }) => ratioOf(driven, driver),
  fraction: ({ driven, driver }) => new Fraction(driven, driver),
};

/** The same with the six ratios made before, and multiplied in one expression. */
function prebuilt() {
  const [plain, ours, fraction] = Object.values(made).map((make) => trains.map((train) => train.map(make)));
  return {
    plain() {
      for (const r of plain) sink += r[0] * r[1] * r[2] * r[3] * r[4] * r[5];
    },
    ours() {
      for (const r of ours) sink += r[0].times(r[1]).times(r[2]).times(r[3]).times(r[4]).times(r[5]).toNumber();
    },
    fraction() {
      for (const r of fraction) sink += r[0].mul(r[1]).mul(r[2]).mul(r[3]).mul(r[4]).mul(r[5]).valueOf();
    },
  };
}

function harmonic() {
  const pairs = (make) => trains.map(([front, rear]) => ({ a: make(front), b: make(rear) }));
  const [plain, ours, fraction] = Object.values(made).map(pairs);
  return {
    plain() {
      for (const { a, b } of plain) sink += 2 / (1 / a + 1 / b);
    },
    ours() {
      for (const { a, b } of ours) sink += rational(2).over(a.inverse().plus(b.inverse())).toNumber();
    },
    fraction() {
      for (const { a, b } of fraction) sink += new Fraction(2).div(a.inverse().add(b.inverse())).valueOf();
    },
  };
}

function comparing() {
  const ours = trains.map(([stage]) => made.ours(stage));
  const fraction = trains.map(([stage]) => made.fraction(stage));
  return {
    ours() {
      for (let index = 1; index < count; index++) sink += ours[index].compare(ours[index - 1]);
    },
    fraction() {
      for (let index = 1; index < count; index++) sink += fraction[index].compare(fraction[index - 1]);
    },
  };
}

const parsing = {
  ours() {
    for (const text of texts) sink += rational(text).sign;
  },
  fraction() {
    for (const text of texts) sink += Number(new Fraction(text).s);
  },
  decimal() {
    for (const text of texts) sink += new Decimal(text).s;
  },
  big() {
    for (const text of texts) sink += new Big(text).s;
  },
};

const parsingFractions = {
  ours() {
    for (const text of fractions) sink += rational(text).sign;
  },
  fraction() {
    for (const text of fractions) sink += Number(new Fraction(text).s);
  },
};

function writing() {
  const rounding = { minimumFractionDigits: 2, maximumFractionDigits: 2 };
  const ours = texts.map((text) => rational(text));
  const fraction = texts.map((text) => new Fraction(text));
  const decimal = texts.map((text) => new Decimal(text));
  const big = texts.map((text) => new Big(text));
  return {
    ours() {
      for (const x of ours) sink += x.toDecimal(rounding).length;
    },
    fraction() {
      for (const x of fraction) sink += x.toString(2).length;
    },
    decimal() {
      for (const x of decimal) sink += x.toFixed(2).length;
    },
    big() {
      for (const x of big) sink += x.toFixed(2).length;
    },
  };
}

const againstFastest = (times) => {
  const others = Object.keys(times).filter((name) => name !== "ours");
  return Math.max(...others.map((name) => quotient(times, "ours", name)));
};

/** How the chain changes against plain numbers, which have no state to spoil, when wide values have been through the same code. */
function change(withWide) {
  const { plain, ours } = chain;
  const before = quotient(race({ plain, ours }, 80), "ours", "plain");
  const wide = rational(`${"7".repeat(40)}/${"3".repeat(39)}1`);
  for (let index = 0; withWide && index < 20000; index++) {
    const one = ratioOf(index + 1, 4e15 + index);
    sink += one.times(one).times(wide).plus(one).over(wide).minus(wide).compare(one) + wide.inverse().toNumber();
    sink += rational(2).over(wide.inverse().plus(one.inverse())).plus(one.times(wide)).sign;
  }
  return quotient(race({ plain, ours }, 80), "ours", "plain") / before;
}

/** Bytes that one chain leaves behind. */
function bytes() {
  for (let run = 0; run < 200; run++) chain.ours();
  const used = [];
  for (let sample = 0; sample < 40; sample++) {
    const before = getHeapStatistics().used_heap_size;
    for (let run = 0; run < 4; run++) chain.ours();
    used.push((getHeapStatistics().used_heap_size - before) / (4 * count));
  }
  return median(used.filter((size) => size >= 0));
}

const parts = {
  chain() {
    const times = race(chain);
    return {
      chain6_vs_plain: quotient(times, "ours", "plain"),
      chain6_vs_fractionjs: quotient(times, "fraction", "ours"),
      chain6_bytes: bytes(),
    };
  },
  prebuilt() {
    const times = race(prebuilt());
    return {
      chain6_prebuilt_vs_plain: quotient(times, "ours", "plain"),
      chain6_prebuilt_vs_fractionjs: quotient(times, "fraction", "ours"),
    };
  },
  harmonic() {
    const times = race(harmonic());
    return {
      harmonic_vs_plain: quotient(times, "ours", "plain"),
      harmonic_vs_fractionjs: quotient(times, "fraction", "ours"),
    };
  },
  comparing: () => ({ compare_vs_fractionjs: quotient(race(comparing()), "fraction", "ours") }),
  parsing: () => ({
    parse_vs_fastest: Math.max(againstFastest(race(parsing)), againstFastest(race(parsingFractions))),
  }),
  writing: () => ({ todecimal_vs_fastest: againstFastest(race(writing())) }),
  wide: () => ({ change: change(true) }),
  control: () => ({ change: change(false) }),
};

/** Runs one part in a worker of its own: what one teaches the compiler is not to help or hinder another. */
const alone = (part) =>
  new Promise((resolve, reject) => {
    const worker = new Worker(new URL(import.meta.url), { workerData: { exactPart: part } });
    worker.once("message", resolve);
    worker.once("error", reject);
  });

export async function run() {
  const figures = {};
  for (const part of ["chain", "prebuilt", "harmonic", "comparing", "parsing", "writing"])
    Object.assign(figures, await alone(part));
  const changes = { wide: [], control: [] };
  for (let time = 0; time < 5; time++)
    for (const part of ["wide", "control"]) changes[part].push((await alone(part)).change);
  return { ...figures, small_after_wide: median(changes.wide) / median(changes.control) };
}

if (!isMainThread && workerData?.exactPart) {
  const figures = parts[workerData.exactPart]();
  if (!Number.isFinite(sink)) throw new Error("The contestants computed something else.");
  parentPort.postMessage(figures);
}
