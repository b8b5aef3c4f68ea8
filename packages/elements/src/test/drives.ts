// Drives made at random, and the figures that they have: fractions that are worked out from the rules of the trade alone.
// Nothing of calc is used.

interface Fraction {
  readonly top: bigint;
  readonly bottom: bigint;
}
const over = (top: number | bigint, bottom: number | bigint = 1): Fraction =>
  bottom < 0 ? { top: -BigInt(top), bottom: -BigInt(bottom) } : { top: BigInt(top), bottom: BigInt(bottom) };
const one = over(1);
const times = (a: Fraction, b: Fraction): Fraction => over(a.top * b.top, a.bottom * b.bottom);
const divided = (a: Fraction, b: Fraction): Fraction => over(a.top * b.bottom, a.bottom * b.top);
const plus = (a: Fraction, b: Fraction): Fraction => over(a.top * b.bottom + b.top * a.bottom, a.bottom * b.bottom);
const minus = (a: Fraction, b: Fraction): Fraction => plus(a, over(-b.top, b.bottom));
const product = (all: readonly Fraction[]): Fraction => all.reduce(times, one);
const size = (a: Fraction): Fraction => (a.top < 0n ? over(-a.top, a.bottom) : a);
const order = (a: Fraction, b: Fraction): number => {
  const difference = a.top * b.bottom - b.top * a.bottom;
  return difference > 0n ? 1 : difference < 0n ? -1 : 0;
};
const lowest = ({ top, bottom }: Fraction): string => {
  let [a, b] = [top < 0n ? -top : top, bottom];
  while (b) [a, b] = [b, a % b];
  return bottom / a === 1n ? `${top / a}` : `${top / a}/${bottom / a}`;
};

type Mode = "halfExpand" | "halfEven" | "floor" | "ceil" | "trunc";

/** A fraction as an English text of so many digits after the point. */
function written({ top, bottom }: Fraction, digits: number, mode: Mode): string {
  const below = top < 0n;
  const scaled = (below ? -top : top) * 10n ** BigInt(digits);
  let whole = scaled / bottom;
  const rest = 2n * (scaled % bottom);
  const half = rest > bottom || (rest === bottom && (mode === "halfExpand" || whole % 2n === 1n));
  if (mode.startsWith("half") ? half : rest > 0n && (mode === "ceil" ? !below : mode === "floor" && below)) whole += 1n;
  const text = String(whole).padStart(digits + 1, "0");
  const grouped = text.slice(0, text.length - digits).replace(/\B(?=(\d{3})+$)/g, ",");
  const sign = below && whole ? "\u2212" : "";
  return sign + grouped + (digits ? `.${text.slice(text.length - digits)}` : "");
}

/** Numbers that look random and are the same in every run and every engine. */
export function randomFrom(seed: number): (below: number) => number {
  let state = seed;
  return (below) => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return Math.floor((((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32) * below);
  };
}

export interface Stage {
  readonly id: string;
  readonly label: string;
  readonly group?: string;
  readonly kind: string;
  readonly [field: string]: unknown;
}
export type Counts = ReadonlyMap<string, number>;

/** Two gears that are sold together, and fit a stage. */
interface SetOnSale {
  readonly stage: string;
  readonly driver: number;
  readonly driven: number;
}

/** A shaft that several axles share after the first split, or one of them behind it. */
interface Branch {
  readonly id: string;
  readonly from?: string;
  readonly stages: readonly Stage[];
}

export interface Drive {
  readonly shared: readonly Stage[];
  readonly branches: readonly Branch[];
  /** The branch that each axle comes from, where there is one. */
  readonly from: Readonly<Partial<Record<"front" | "rear", string>>>;
  readonly axles: Readonly<Record<"front" | "rear", readonly Stage[]>>;
  readonly sets: readonly SetOnSale[];
  /** What the author proposes: counts by address. */
  readonly alternatives: readonly Counts[];
  readonly wheels: Readonly<Record<"front" | "rear", number>>;
  readonly target: readonly [number, number];
  readonly rounding: { readonly digits: number; readonly mode: Mode } | undefined;
}

/** What stands between the first split and an axle: branches, one behind the other, and its own stages. */
function branchedTo({ branches, from, axles }: Drive, axle: "front" | "rear"): readonly Stage[] {
  const way: Stage[] = [];
  for (let at = from[axle]; at;) {
    const branch = branches.find(({ id }) => id === at)!;
    way.unshift(...branch.stages);
    at = branch.from;
  }
  return [...way, ...axles[axle]];
}

/** All that stands between the motor and an axle. */
const wayTo = (drive: Drive, axle: "front" | "rear"): readonly Stage[] => [...drive.shared, ...branchedTo(drive, axle)];

/** What stands between the last shaft that both axles share and one of them. */
function apart(drive: Drive, axle: "front" | "rear"): readonly Stage[] {
  const other = branchedTo(drive, axle === "front" ? "rear" : "front");
  return branchedTo(drive, axle).filter((stage) => !other.includes(stage));
}

/** Whether a stage says which way it turns: two gears do only where their form is told. */
const saysTurn = ({ kind, internal }: Stage): boolean =>
  kind === "train" || kind === "belt" || kind === "planetary" || (kind === "pair" && internal !== undefined);

/** A drive of any length: pairs, sets, rows, belts, worms, planetaries; sometimes one ratio that is printed on a box. */
export function driveFrom(random: (below: number) => number): Drive {
  let made = 0;
  const tooth = (): number => 8 + random(90);
  const stage = (prefix: string, group: string | undefined): Stage => {
    const id = `${prefix}-${++made}`;
    const common = { id, label: `Stage ${made}`, ...(group && { group }) };
    switch (random(11)) {
      case 9:
      case 10:
        return { ...common, kind: "pair", set: true, driver: tooth(), driven: tooth() };
      case 0:
        return { ...common, kind: "train", teeth: Array.from({ length: 2 + random(4) }, tooth) };
      case 1:
        return { ...common, kind: "belt", driver: tooth(), driven: tooth() };
      case 2:
        return { ...common, kind: "worm", starts: 1 + random(3), teeth: tooth() };
      case 3: {
        const fixed = ["ring", "carrier"][random(2)]!;
        const sun = 9 + random(20);
        return {
          ...{ ...common, kind: "planetary", sun, ring: sun + 20 + random(40), fixed, input: "sun" },
          ...{ output: fixed === "ring" ? "carrier" : "ring", repeat: 1 + random(2) },
        };
      }
      case 4:
        return { ...common, kind: "pair", internal: true, driver: 9 + random(20), driven: 40 + random(60) };
      case 5:
        return { ...common, kind: "pair", form: "bevel", driver: tooth(), driven: tooth() };
      default:
        return { ...common, kind: "pair", driver: tooth(), driven: tooth() };
    }
  };
  const some = (prefix: string, most: number, group?: string): Stage[] =>
    Array.from({ length: 1 + random(most) }, () => stage(prefix, group));
  const shared = [...some("box", 5, "box"), ...some("shaft", 3)];
  const printed = `${1 + random(4)}.${1 + random(9)}${random(10)}`;
  if (random(2)) shared.push({ id: "printed", label: "Printed", kind: "published", value: printed });
  const axles = { front: some("front", 4, "axle"), rear: some("rear", 4, "axle") };
  const from = 1 + random(400);
  // Sets that can be had for a stage: the fitted one may be among them, and most share a count with it.
  const sets = [...shared, ...axles.front, ...axles.rear].flatMap(({ id, set, driver, driven }) =>
    set
      ? Array.from({ length: 1 + random(4) }, () => ({
          stage: id,
          driver: random(2) ? (driver as number) : tooth(),
          driven: random(2) ? (driven as number) : tooth(),
        }))
      : [],
  );
  const modes = ["halfExpand", "halfEven", "floor", "ceil", "trunc"] as const;
  // Both axles behind one more shaft, or one of them behind two.
  const nested = random(3);
  const branches: Branch[] = [
    ...(nested ? [{ id: "mid", stages: some("mid", 2) }] : []),
    ...(nested > 1 ? [{ id: "far", from: "mid", stages: some("far", 2) }] : []),
  ];
  const drive: Drive = {
    shared,
    branches,
    from: nested ? { front: nested > 1 ? "far" : "mid", rear: "mid" } : {},
    axles,
    sets,
    alternatives: [],
    wheels: { front: 900 + random(500), rear: 900 + random(500) },
    target: [from, from + 1 + random(4000)],
    rounding: random(2) ? { digits: random(5), mode: modes[random(5)]! } : undefined,
  };
  return { ...drive, alternatives: [proposed(drive, random), proposed(drive, random)] };
}

/** Some counts that an author might propose instead, sets whole. */
function proposed(drive: Drive, random: (below: number) => number): Counts {
  const counts = countsOf(drive);
  const changes = new Map<string, number>();
  for (const [address, count] of counts) {
    if (random(6)) continue;
    const stage = stagesOf(drive).find(({ id }) => id === address.split(".")[0])!;
    const value = 1 + random(120);
    const now = new Map([...counts, ...changes]);
    if (value === count || !mayBe(stage, now, address, value)) continue;
    changes.set(address, value);
    if (stage.set)
      for (const field of ["driver", "driven"])
        changes.set(`${stage.id}.${field}`, new Map([...now, ...changes]).get(`${stage.id}.${field}`)!);
  }
  return changes;
}

export const stagesOf = ({ shared, branches, axles }: Drive): readonly Stage[] => [
  ...shared,
  ...branches.flatMap(({ stages }) => stages),
  ...axles.front,
  ...axles.rear,
];

/** Every count that can be changed, by its address. */
export const countsOf = (drive: Drive): Counts =>
  new Map(
    stagesOf(drive).flatMap((stage) =>
      Object.entries(stage).flatMap(([field, value]): [string, number][] =>
        Array.isArray(value)
          ? value.map((count: number, n) => [`${stage.id}.${field}.${n}`, count])
          : typeof value === "number" && field !== "repeat"
            ? [[`${stage.id}.${field}`, value]]
            : [],
      ),
    ),
  );

export const documentOf = ({
  shared,
  axles,
  sets,
  alternatives,
  wheels,
  target,
  rounding,
  ...more
}: Drive): unknown => ({
  format: "meshwright-build/1",
  title: "Made at random",
  stages: shared,
  outputs: (["front", "rear"] as const).map((id) => ({
    ...{ id, label: id === "front" ? "Front" : "Rear", stages: axles[id] },
    ...(more.from[id] && { from: more.from[id] }),
    wheel: { diameter: `${wheels[id] / 10} mm` },
  })),
  ...(more.branches.length && { branches: more.branches }),
  target: { from: target[0], to: target[1] },
  compare: { of: "front", with: "rear" },
  parts: sets.map((set, n) => ({ id: `set-${n}`, is: "set", name: `Set ${n}`, available: true, ...set })),
  alternatives: alternatives.map((changes, n) => ({
    ...{ id: `other-${n}`, label: `Other ${n}` },
    changes: Object.fromEntries(changes),
  })),
  ...(rounding && {
    rounding: {
      ...{ minimumFractionDigits: rounding.digits, maximumFractionDigits: rounding.digits },
      roundingMode: rounding.mode,
    },
  }),
});

/** What one stage does: its reduction, and whether it turns round (−1), keeps (1), or leaves that open (0). */
function effect(stage: Stage, counts: Counts): { readonly reduction: Fraction; readonly turns: number } {
  const count = (field: string): number => counts.get(`${stage.id}.${field}`)!;
  switch (stage.kind) {
    case "train": {
      const last = (stage.teeth as number[]).length - 1;
      return { reduction: over(count(`teeth.${last}`), count("teeth.0")), turns: last % 2 ? -1 : 1 };
    }
    case "belt":
      return { reduction: over(count("driven"), count("driver")), turns: 1 };
    case "worm":
      return { reduction: over(count("teeth"), count("starts")), turns: 0 };
    case "planetary": {
      // Willis: with the ring held the carrier turns once for 1 + ring/sun turns of the sun; with the carrier held it is a row.
      const [sun, ring] = [count("sun"), count("ring")];
      const single = stage.fixed === "ring" ? over(sun + ring, sun) : over(ring, sun);
      const repeat = stage.repeat as number;
      return {
        reduction: product(Array.from({ length: repeat }, () => single)),
        turns: stage.fixed === "carrier" && repeat % 2 ? -1 : 1,
      };
    }
    case "published":
      return { reduction: one, turns: 0 };
    default: {
      const turns = stage.form ? 0 : stage.internal ? 1 : -1;
      return { reduction: over(count("driven"), count("driver")), turns };
    }
  }
}

/** Whether a count may have a value: a ring has to be larger than what runs inside it. */
export function mayBe(stage: Stage, counts: Counts, address: string, value: number): boolean {
  if (value < 1 || value > 1_000_000) return false;
  const next = new Map(counts).set(address, value);
  const count = (field: string): number => next.get(`${stage.id}.${field}`)!;
  if (stage.kind === "planetary") return count("ring") > count("sun");
  return !stage.internal || count("driven") > count("driver");
}

/** What the page should show, by name. */
export function expected(drive: Drive, counts: Counts, article: Counts): Record<string, string> {
  const { shared, axles, alternatives, wheels, target, rounding } = drive;
  const mode = rounding?.mode ?? "halfExpand";
  const usual = rounding?.digits ?? 2;
  const printed = shared.find(({ kind }) => kind === "published");
  // A printed ratio means half a unit of its last digit either way.
  const middle = printed && over(Number((printed.value as string).replace(".", "")), 100);
  const ends = middle ? [minus(middle, over(1, 200)), plus(middle, over(1, 200))] : [one, one];
  const interval = (value: Fraction, digits = usual, unknown = true): string => {
    const [low, high] = (unknown ? ends : [one, one]).map((end) => times(value, end)) as [Fraction, Fraction];
    const text = written(low, digits, mode);
    if (text === written(high, digits, mode)) return text;
    return `${written(low, digits, "floor")} to ${written(high, digits, "ceil")}`;
  };
  const percent = (value: Fraction, digits = usual): string => `${written(times(value, over(100)), digits, mode)}%`;
  const along = (stages: readonly Stage[], of = counts): Fraction =>
    product(stages.map((stage) => effect(stage, of).reduction));
  const turnsOf = (stages: readonly Stage[]): number =>
    stages.reduce((turns, stage) => turns * effect(stage, counts).turns, 1);
  const found: Record<string, string> = {};
  const totals = { front: one, rear: one };
  for (const id of ["front", "rear"] as const) {
    const way = wayTo(drive, id);
    const total = (totals[id] = along(way));
    const before = along(way, article);
    found[`reduction ${id}`] = interval(total);
    for (const digits of [0, 1, 6]) found[`reduction ${id} ${digits}`] = interval(total, digits);
    found[`fraction ${id}`] = printed ? "not known" : lowest(total);
    found[`axle ${id}`] = interval(along(axles[id]), usual, false);
    const [low, high] = ends.map((end) => times(total, end)) as [Fraction, Fraction];
    const [from, to] = target.map((end) => over(end)) as [Fraction, Fraction];
    const isInside = order(low, from) >= 0 && order(high, to) <= 0;
    found[`standing ${id}`] = isInside
      ? "inside"
      : order(high, from) < 0
        ? "too few motor turns"
        : order(low, to) > 0
          ? "too many motor turns"
          : "cannot tell";
    found[`direction ${id}`] = { "1": "same way", "-1": "opposite way", "0": "not known" }[String(turnsOf(way))]!;
    const changes = {
      reduction: minus(divided(total, before), one),
      "wheel-speed": minus(divided(before, total), one),
      midpoint: times(over(2), divided(minus(total, before), plus(total, before))),
    };
    alternatives.forEach((other, n) => {
      found[`other-${n} ${id}`] = interval(along(way, new Map([...article, ...other])));
    });
    for (const [measure, change] of Object.entries(changes)) {
      const text = percent(change);
      found[`change ${id} ${measure}`] = (change.top > 0n && /[1-9]/.test(text) ? "+" : "") + text;
    }
  }
  const { front, rear } = totals;
  found["mean harmonic"] = interval(divided(over(2), plus(divided(one, front), divided(one, rear))));
  found["mean arithmetic"] = interval(divided(plus(front, rear), over(2)));
  for (const stage of stagesOf(drive))
    found[`reduction ${stage.id}`] =
      stage === printed ? interval(one) : interval(effect(stage, counts).reduction, usual, false);
  for (const [address, count] of counts) found[`count ${address}`] = String(count);
  // How far each wheel rolls for the same turns of the shaft that they share.
  const rolled = {
    tyres: [divided(over(wheels.front), front), divided(over(wheels.rear), rear)],
    gears: [divided(one, front), divided(one, rear)],
  };
  const farther = (scope: "tyres" | "gears", base: string): Fraction => {
    const [ahead, behind] = rolled[scope] as [Fraction, Fraction];
    const against = { rear: behind, front: ahead, mean: divided(plus(ahead, behind), over(2)) }[base]!;
    return divided(minus(ahead, behind), against);
  };
  for (const scope of ["tyres", "gears"] as const)
    for (const base of ["rear", "front", "mean"]) found[`gap ${scope} ${base}`] = percent(size(farther(scope, base)));
  const gap = farther("tyres", "rear");
  const isAhead = gap.top > 0n;
  found.lead = gap.top ? `${percent(size(gap), 3)} ${isAhead ? "ahead" : "behind"}` : "level";
  found.drift = `${written(size(times(gap, over(10_000))), 0, mode)} mm`;
  const words = gap.top ? `${percent(size(gap))} ${isAhead ? "farther" : "less far"}` : "as far";
  // Shafts that run against each other are a fault, where every stage after the split says which way it turns.
  const [toFront, toRear] = [apart(drive, "front"), apart(drive, "rear")];
  const isOpposed = [...toFront, ...toRear].every(saysTurn) && turnsOf(toFront) * turnsOf(toRear) < 0;
  found.gauge = isOpposed
    ? "Front and rear turn against each other. Do not drive it. Check the ring-gear sides, then count the meshes."
    : `For the same turns of the shaft, Front against Rear: ${words}.`;
  found["summary total"] = [found["reduction front"], found["reduction rear"]].join(" | ");
  found["summary axle"] = [found["axle front"], found["axle rear"]].join(" | ");
  found["summary exact"] = `Front: ${found["fraction front"]} | Rear: ${found["fraction rear"]}`;
  found["summary range"] = (["front", "rear"] as const)
    .map((id) => `${id === "front" ? "Front" : "Rear"}: ${found[`reduction ${id}`]}, ${found[`standing ${id}`]}`)
    .join(". ");
  return found;
}

/** The figure that a name of these asks for: attributes of an element, or a query. Pictures and tables have none. */
export function queryFor(name: string): Readonly<Record<string, string>> {
  const [figure = "", of = "", more = ""] = name.split(" ");
  if (figure.startsWith("other-")) return { of, at: figure };
  switch (figure) {
    case "axle":
      return { of, group: "axle" };
    case "gap":
      return { figure, scope: of, base: more };
    case "mean":
      return { figure, measure: of };
    case "lead":
      return { figure, digits: "3" };
    case "drift":
      return { figure, over: "10 m" };
    case "change":
      return { figure, of, measure: more };
    default:
      return { figure, of, ...(more && { digits: more }) };
  }
}
