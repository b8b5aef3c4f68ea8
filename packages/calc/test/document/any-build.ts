import fc from "fast-check";
import { samples, stageShapes, type StageKind } from "../../src/stages/index.js";

type Data = Record<string, unknown>;

const count = fc.integer({ min: 1, max: 90 });
const numeric = fc.oneof(count, fc.constantFrom("0.8", "62/15", "0.000000000001", 999_999_999_999, "1/3", 0.125));
const size = fc.constantFrom("120 mm", "4.65 in", "0.001\u00a0mm", "1/8 ft", "999999 m");
const maybe = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: undefined, freq: 2 });
/** So many turns, or from and to. */
const span = fc.oneof(
  numeric,
  fc.tuple(count, fc.nat(5)).map(([from, more]) => ({ from, to: from + more })),
);
const joined = (...parts: fc.Arbitrary<Data>[]): fc.Arbitrary<Data> =>
  fc.tuple(...parts).map((list) => Object.assign({}, ...list) as Data);
const pitch = fc.record(
  { module: fc.constantFrom("0.8", 1, "0.000001"), pressureAngle: fc.constantFrom(20, "14.5", 45) },
  { requiredKeys: [] },
);
const pair = fc.record({ driver: count, driven: count });

const kinds: Partial<Record<StageKind, fc.Arbitrary<Data>>> = {
  pair: joined(
    pair,
    pitch,
    fc.record(
      {
        form: fc.constantFrom("spur", "helical", "bevel"),
        internal: fc.constantFrom(false, false, true),
        set: fc.boolean(),
        helixAngle: fc.constantFrom(0, 30, -45),
        driverShift: fc.constantFrom("0.5", "-0.25", -3),
        drivenTip: size,
        thinning: fc.constantFrom("0.1 mm", "0 mm"),
      },
      { requiredKeys: [] },
    ),
  ),
  train: joined(fc.record({ teeth: fc.array(count, { minLength: 2, maxLength: 5 }) }), pitch),
  belt: joined(
    pair,
    fc.record({ pitch: size, beltTeeth: maybe(count), centre: maybe(size), chain: maybe(fc.boolean()) }),
  ),
  worm: fc.record({ starts: count, teeth: count, diameter: maybe(size) }),
  planetary: fc.record({
    sun: count,
    ring: fc.integer({ min: 91, max: 200 }),
    fixed: fc.constant("ring"),
    input: fc.constant("sun"),
    output: fc.constant("carrier"),
    repeat: fc.constantFrom(1, 2, 30),
  }),
  measured: fc.record({
    turnsIn: numeric,
    turnsOut: span,
    held: maybe(fc.boolean()),
    spans: maybe(
      fc.array(
        pair.map((one) => ({ id: "along", kind: "pair", ...one })),
        { minLength: 1, maxLength: 3 },
      ),
    ),
  }),
  published: fc.record({
    value: fc.constantFrom("2.74", "1.5", "19:1", "52/19", "0.000001"),
    read: maybe(fc.constantFrom("rounded", "truncated", "unsure")),
    exact: maybe(fc.boolean()),
  }),
  selectable: fc.record({
    selected: fc.constant("on"),
    positions: fc.constantFrom(
      [{ id: "on", stages: [] }],
      [
        { id: "on", released: "free" },
        { id: "off", released: "held" },
      ],
      [
        { id: "on", stages: [] },
        { id: "off", released: "free" },
      ],
    ),
  }),
};

/** A stage of any kind without its id; of a kind that has no generator here, as an editor begins it. */
const stage = fc
  .tuple(
    fc.constantFrom(...(Object.keys(stageShapes) as StageKind[])),
    maybe(fc.boolean()),
    maybe(fc.constantFrom("a", "b")),
  )
  .chain(([kind, reverses, group]) =>
    (kinds[kind] ?? fc.constant(samples[kind])).map((fields): Data => ({ kind, ...fields, reverses, group })),
  );
const list = fc.array(stage, { maxLength: 3 });
const splitKind = fc.constantFrom("spool", "differential", "differential");
const wheel = maybe(
  fc.oneof(
    fc.record({ diameter: size }),
    fc.record({ loadedDiameter: size }),
    fc.record({ travel: fc.record({ turns: numeric, length: size }) }),
  ),
);
/** Changes: each a number among all places that the document has, and what is put there. */
const picks = fc.array(fc.tuple(fc.nat(), count), { maxLength: 2 });
/** What is put there instead, now and then, and is rarely right. */
const slip = fc.oneof(
  { weight: 15, arbitrary: fc.constant(undefined) },
  { weight: 1, arbitrary: fc.constantFrom<unknown>(0, "eleven", null, "2.5", { kind: "spool" }) },
);

const parts = fc.record({
  lists: fc.tuple(list, list, list),
  outputs: fc.array(
    fc.record({
      list,
      from: maybe(fc.constantFrom("b0", "b1")),
      motor: fc.oneof(
        { weight: 6, arbitrary: fc.constant(undefined) },
        { weight: 1, arbitrary: fc.record({ kv: numeric }) },
      ),
      wheel,
    }),
    { minLength: 1, maxLength: 4 },
  ),
  splits: fc.tuple(maybe(splitKind), maybe(splitKind), maybe(splitKind)),
  nested: fc.boolean(),
  wheels: fc.constantFrom("all", "none", "some"),
  shares: maybe(fc.array(numeric, { minLength: 6, maxLength: 6 })),
  target: maybe(fc.constantFrom({ from: 1, to: 40 }, { from: "62/15", to: "62/15" })),
  rounding: maybe(
    fc.constantFrom({ maximumFractionDigits: 1 }, { maximumSignificantDigits: 3 }, { minimumFractionDigits: 2 }),
  ),
  wheelTurns: span,
  same: fc.boolean(),
  alternatives: fc.array(fc.tuple(picks, slip), { maxLength: 3 }),
  back: picks,
});

/** Documents with all there is in them: most can be read, and where one cannot, `readBuild` says so. */
export const anyBuild: fc.Arbitrary<Data> = parts.map((given) => {
  const { nested, shares, target, rounding, same } = given;
  let next = 0;
  // What is printed or counted and says the same is the same thing, where the document says so at all.
  const things = new Map<string, string>();
  const named = (some: readonly Data[]): Data[] =>
    some.map((one) => {
      const id = `s${next++}`;
      const { reverses: _, group: __, ...says } = one;
      const text = JSON.stringify(says);
      const sameAs = same && (one.kind === "published" || one.kind === "measured") ? things.get(text) : undefined;
      things.set(text, id);
      return { id, ...one, ...(sameAs && { sameAs }) };
    });
  const wheels = (one: object | undefined) =>
    given.wheels === "none" ? undefined : (one ?? (given.wheels === "all" ? { diameter: "100 mm" } : undefined));
  const outputs = given.outputs.map(({ list: own, from, motor, wheel: tyre }, n) => ({
    id: `o${n}`,
    ...(from && !motor && { from }),
    ...(motor && { motor }),
    ...(wheels(tyre) && { wheel: wheels(tyre) }),
    stages: named(own),
  }));
  const home = { b0: "centre", b1: nested ? "b0" : "centre" };
  const isLive = (id: string): boolean =>
    outputs.some(({ from }) => from === id || (id === "b0" && nested && from === "b1"));
  const fed = (place: string): string[] => [
    ...outputs.filter((one) => !("motor" in one) && (one.from ?? "centre") === place).map(({ id }) => id),
    ...(["b0", "b1"] as const).filter((id) => home[id] === place && isLive(id)),
  ];
  const split = (place: string, n: 0 | 1 | 2) => {
    const kind = given.splits[n];
    return kind && { kind, ...(shares && { share: Object.fromEntries(fed(place).map((id, at) => [id, shares[at]])) }) };
  };
  const branches = [
    { id: "b0", stages: named(given.lists[1]), split: split("b0", 1) },
    { id: "b1", stages: named(given.lists[2]), ...(nested && { from: "b0" }), split: split("b1", 2) },
  ];
  const shared = { stages: named(given.lists[0]), centre: split("centre", 0) };
  const all = [shared, ...branches, ...outputs].flatMap(({ stages }) => stages);
  const counts = ["driver", "driven", "starts", "sun", "turnsIn"];
  const places: ((to: number) => readonly [address: string, value: unknown])[] = [
    ...all.flatMap((one) =>
      counts
        .filter((field) => field in one)
        .map((field) => (to: number) => [`${one.id as string}.${field}`, to] as const),
    ),
    ...all.map(
      ({ id }) =>
        (to: number) =>
          [id as string, { id, kind: "pair", driver: to, driven: 30 }] as const,
    ),
    ...outputs.map(
      ({ id }) =>
        (to: number) =>
          [`${id}.wheel`, { diameter: `${to} mm` }] as const,
    ),
    (to) => ["centre", to % 2 ? { kind: "differential" } : null],
    (to) => ["target", { from: 1, to }],
    (to) => ["battery", { cells: to, chemistry: "lipo" }],
  ];
  const changed = (some: readonly (readonly [number, number])[], wrong?: unknown) =>
    Object.fromEntries(
      some.map(([place, to]) => {
        const [address, right] = places[place % places.length]!(to);
        return [address, wrong === undefined ? right : wrong];
      }),
    );
  const levers = all.filter(({ positions }) => Array.isArray(positions) && positions.length > 1);
  return {
    format: "meshwright-build/1",
    ...shared,
    branches,
    outputs,
    target,
    rounding,
    modes: [{ id: "m", positions: Object.fromEntries(levers.map(({ id }) => [id, "off"])) as Data }],
    measurements: [{ what: "o0", motorTurns: 1, wheelTurns: given.wheelTurns, with: changed(given.back) }],
    alternatives: given.alternatives.map(([some, wrong], n) => ({ id: `a${n}`, changes: changed(some, wrong) })),
    revision: { number: 2 },
    revisions: [{ number: 1, back: [{ set: changed(given.back) }] }],
  };
});
