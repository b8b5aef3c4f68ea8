// Articles made at random: builds in nested places, elements that ask them for figures rightly and wrongly, languages around
// them, content of every sort inside. Nothing of calc is used here, so that page, command and Node read the very same.

/** An element of an article, or the article itself. */
export interface MadeElement {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: (MadeElement | string)[];
  readonly parent: MadeElement | undefined;
}

/** Numbers that look random and are the same in every run and every engine: each from 0 to below. */
type Random = (below: number) => number;

function randomFrom(seed: number): Random {
  let state = seed;
  return (below) => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return Math.floor((((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32) * below);
  };
}

const oneOf = <T>(random: Random, list: readonly T[]): T => list[random(list.length)]!;
const languages = ["de", "fr", "es", "ja", "ar-EG", "en", "en-GB", "de_AT", "it", "", "no tag"];
const ids = ["", "", "a", "b"];

type Data = Readonly<Record<string, unknown>>;

/** A stage of any kind that has counts. */
function stageFrom(random: Random, id: string): Data {
  const tooth = () => 9 + random(80);
  const common = { id, ...(random(3) && { label: `Stage ${id}` }), ...(random(3) === 0 && { group: "box" }) };
  switch (random(8)) {
    case 0:
      return { ...common, kind: "train", teeth: Array.from({ length: 2 + random(3) }, tooth) };
    case 1:
      return { ...common, kind: "belt", driver: tooth(), driven: tooth(), ...(random(2) && { chain: true }) };
    case 2:
      return { ...common, kind: "worm", starts: 1 + random(3), teeth: tooth() };
    case 3: {
      const sun = 9 + random(20);
      const turns = { fixed: "ring", input: "sun", output: "carrier" };
      return { ...common, kind: "planetary", sun, ring: sun + 20 + random(40), ...turns };
    }
    case 4:
      return { ...common, kind: "published", value: `${1 + random(3)}.${10 + random(80)}` };
    case 5:
      return { ...common, kind: "pair", set: true, driver: tooth(), driven: tooth() };
    default:
      return { ...common, kind: "pair", driver: tooth(), driven: tooth() };
  }
}

/** The data of a build: two axles, sometimes wheels, a range, a rounding, an alternative, a motor with its pack. */
function buildFrom(random: Random): Data {
  const some = (prefix: string, most: number) =>
    Array.from({ length: 1 + random(most) }, (_, n) => stageFrom(random, `${prefix}-${n + 1}`));
  const wheels = random(4) > 0;
  const axle = (id: string): Data => ({
    id,
    label: id === "front" ? "Front" : "Rear",
    stages: some(id, 2),
    ...(wheels && { wheel: { diameter: `${900 + random(500)}`.replace(/(\d)$/, ".$1 mm") } }),
  });
  const modes = ["halfExpand", "halfEven", "floor", "ceil"];
  const digits = random(4);
  const from = 1 + random(60);
  return {
    format: "meshwright-build/1",
    stages: [{ id: "first", kind: "pair", driver: 12 + random(10), driven: 40 + random(30) }, ...some("shared", 3)],
    outputs: [axle("front"), axle("rear")],
    ...(random(3) && { target: { from: `${from}.5`, to: from + 10 + random(40) } }),
    ...(random(2) && {
      rounding: { minimumFractionDigits: digits, maximumFractionDigits: digits, roundingMode: oneOf(random, modes) },
    }),
    ...(random(2) && { motor: { kv: 1000 + random(2000) }, battery: { cells: 2 + random(3), chemistry: "lipo" } }),
    ...(random(4) === 0 && { centre: { kind: "differential" } }),
    ...(random(3) === 0 && { wheelbase: `${250 + random(100)} mm` }),
    alternatives: [{ id: "other", label: "Other", changes: { "first.driver": 9 + random(20) } }],
  };
}

/** The same in attributes: no more than they can say. */
function notationFrom(random: Random): Readonly<Record<string, string>> {
  const tooth = () => 9 + random(80);
  return {
    stages: `First: ${tooth()} to ${tooth()}; Row: ${tooth()} to ${tooth()} to ${tooth()}`,
    front: `Ring: ${tooth()} to ${tooth()}`,
    rear: `Ring: ${tooth()} to ${tooth()}; Hub: printed 1.${10 + random(80)}`,
    ...(random(2) && { "front-wheel": `${100 + random(40)} mm`, "rear-wheel": `${100 + random(40)} mm` }),
    ...(random(2) && { target: "12.5 to 60" }),
  };
}

/** Attributes of a value; one time in six with a word that is none. */
function queryFrom(random: Random): Readonly<Record<string, string>> {
  const of = () => oneOf(random, ["front", "rear", "first"]);
  const axle = () => oneOf(random, ["front", "rear"]);
  const wrong = random(6) === 0;
  const queries: readonly (() => Readonly<Record<string, string>>)[] = [
    () => ({ of: wrong ? "frotn" : of() }),
    () => ({ figure: "reduction", of: axle(), digits: wrong ? "many" : String(random(5)) }),
    () => ({ figure: wrong ? "standign" : "standing", of: axle() }),
    () => ({ figure: "fraction", of: axle() }),
    () => ({ figure: "lead", scope: wrong ? "gear" : "gears" }),
    () => ({ figure: "lead" }),
    () => ({ figure: "gap", base: wrong ? "nobody" : oneOf(random, ["front", "rear", "mean"]) }),
    () => ({ figure: "farther" }),
    () => ({ figure: "drift", over: wrong ? "ten" : "10 m" }),
    () => ({ figure: "travel", of: axle(), unit: wrong ? "MM" : oneOf(random, ["mm", "in", "cm"]) }),
    () => ({ figure: "counts", of: wrong ? "frist" : "first" }),
    () => ({ figure: "count", of: wrong ? "first.drivr" : "first.driver" }),
    () => ({ figure: "range" }),
    () => ({
      figure: "change",
      of: axle(),
      from: wrong ? "othr" : "other",
      measure: oneOf(random, ["reduction", "travel"]),
    }),
    () => ({ figure: "mean", measure: wrong ? "Arithmetic" : "arithmetic" }),
    () => ({ figure: "direction", of: axle() }),
    () => ({ figure: "reduction", of: axle(), drive: wrong ? "straight" : "straight-on" }),
  ];
  return oneOf(random, queries)();
}

const contents = [
  "43.32",
  "",
  " 12 ",
  "inside",
  " turns of the motor",
  ", which is right.",
  "a long sentence with 3 words and more of them than any figure has",
  "4,3",
];

/** An article: its root, and all that it holds. */
export function articleFrom(seed: number): MadeElement {
  const random = randomFrom(seed);
  let number = 0;
  const add = (
    parent: MadeElement | undefined,
    name: string,
    attributes: Readonly<Record<string, string>>,
    text = "",
  ) => {
    const element: MadeElement = { name, attributes, children: text ? [text] : [], parent };
    parent?.children.push(element);
    return element;
  };
  const asking = (): Record<string, string> => ({
    "data-n": String(number++),
    ...(random(3) === 0 && { build: oneOf(random, ["a", "b", "nope"]) }),
    ...(random(4) === 0 && { at: oneOf(random, ["article", "other", "articel"]) }),
    ...(random(8) === 0 && { lang: oneOf(random, languages) }),
  });
  const build = (parent: MadeElement): void => {
    const id = oneOf(random, ids);
    const own = id ? { id } : undefined;
    if (random(2)) add(parent, "mw-build", { ...own, ...notationFrom(random) });
    else {
      const holder = add(parent, "mw-build", { ...own });
      add(holder, "script", { type: "application/json" }, JSON.stringify(buildFrom(random)));
    }
  };
  const element = (parent: MadeElement): void => {
    const of = random(3) ? undefined : { of: oneOf(random, ["front", "rear", "nobody"]) };
    switch (random(9)) {
      case 0:
        return void add(parent, "mw-teeth", {
          ...asking(),
          of: oneOf(random, ["first.driver", "first.driven", "frist.driver"]),
        });
      case 1:
        return void add(parent, "mw-ratio-summary", { ...asking(), ...of });
      case 2:
        return void add(parent, "mw-working", { ...asking(), ...of });
      case 3: {
        const base = random(3) ? undefined : { base: oneOf(random, ["front", "mean", "of"]) };
        return void add(parent, "mw-overdrive-gauge", { ...asking(), ...base });
      }
      case 4:
        return void add(parent, "mw-wheel-speed", {
          ...asking(),
          ...of,
          ...(random(3) === 0 && { unit: oneOf(random, ["mph", "MPH"]) }),
        });
      default:
        return void add(parent, "mw-value", { ...asking(), ...queryFrom(random) }, oneOf(random, contents));
    }
  };
  const fill = (parent: MadeElement, depth: number): void => {
    for (let n = 2 + random(4); n; n--) {
      const what = random(10);
      if (what < 2) build(parent);
      else if (what < 4 && depth < 3)
        fill(
          add(
            parent,
            oneOf(random, ["div", "section", "article"]),
            random(3) ? {} : { lang: oneOf(random, languages) },
          ),
          depth + 1,
        );
      else element(parent);
    }
  };
  const root = add(undefined, "main", { lang: oneOf(random, languages) });
  fill(root, 0);
  build(root);
  element(root);
  return root;
}

const escaped = (text: string): string => text.replace(/&/g, "&amp;").replace(/"/g, "&quot;").replace(/</g, "&lt;");

/** An article as HTML. */
export function htmlOf({ name, attributes, children }: MadeElement): string {
  const told = Object.entries(attributes).map(([key, value]) => ` ${key}="${escaped(value)}"`);
  const inside = children.map((child) =>
    typeof child !== "string" ? htmlOf(child) : name === "script" ? child : escaped(child),
  );
  return `<${name}${told.join("")}>${inside.join("")}</${name}>`;
}

/** Every element, in the order of the document. */
export function* elementsIn(root: MadeElement): Generator<MadeElement> {
  yield root;
  for (const child of root.children) if (typeof child !== "string") yield* elementsIn(child);
}
