import type { Branch, Build, Output } from "@meshwright/calc/drivetrain";
import { displays, type Stage } from "@meshwright/calc/stages";

// A drivetrain taken apart into what changes as one thing: a stage, an axle's own fields, the order of a shaft, a part, a mount.

type Named = { readonly id: string };

/** What changes as one thing, by a name: `stage:primary`, `shaft:front`, `axle:front`, `part:p16`, `build:target`. */
export type Units = ReadonlyMap<string, unknown>;

const whole = new Set(["format", "stages", "outputs", "branches", "parts", "alternatives", "mounts", "measurements"]);

const shaftsOf = (build: Build): readonly (readonly [id: string, stages: readonly Stage[]])[] => [
  ["", build.stages],
  ...(build.branches ?? []).map(({ id, stages }) => [id, stages] as const),
  ...build.outputs.map(({ id, stages }) => [id, stages] as const),
];

export function unitsOf(build: Build | undefined): Map<string, unknown> {
  const units = new Map<string, unknown>();
  if (!build) return units;
  for (const [key, value] of Object.entries(build)) if (!whole.has(key)) units.set(`build:${key}`, value);
  for (const [id, stages] of shaftsOf(build)) {
    units.set(
      `shaft:${id}`,
      stages.map(({ id: stage }) => stage),
    );
    for (const stage of stages) units.set(`stage:${stage.id}`, stage);
  }
  const lists: readonly (readonly [key: string, one: string, list: readonly Named[] | undefined])[] = [
    ["axles", "axle", build.outputs],
    ["branches", "branch", build.branches],
    ["parts", "part", build.parts],
    ["ways", "way", build.alternatives],
  ];
  for (const [key, one, list] of lists) {
    if (list?.length)
      units.set(
        `list:${key}`,
        list.map(({ id }) => id),
      );
    for (const { stages: _, ...value } of (list ?? []) as readonly (Named & { stages?: unknown })[])
      units.set(`${one}:${value.id}`, value);
  }
  for (const mount of build.mounts ?? []) units.set(`mount:${mount.stage}`, mount);
  return units;
}

const idsAt = (units: Units, key: string): readonly string[] => (units.get(key) as readonly string[] | undefined) ?? [];

/** The drivetrain that units make up, as data that has not been checked. */
export function buildOf(units: Units): Record<string, unknown> {
  const stages = (shaft: string): readonly unknown[] =>
    idsAt(units, `shaft:${shaft}`).flatMap((id) => units.get(`stage:${id}`) ?? []);
  const all = <One>(list: string, one: string): readonly One[] =>
    idsAt(units, `list:${list}`).flatMap((id) => (units.get(`${one}:${id}`) as One | undefined) ?? []);
  const inOrder = (prefix: string): readonly unknown[] =>
    [...units].filter(([key, value]) => key.startsWith(prefix) && value !== undefined).map(([, value]) => value);
  const some = (key: string, list: readonly unknown[]): object => (list.length ? { [key]: list } : {});
  return {
    format: "meshwright-build/1",
    ...Object.fromEntries(
      [...units]
        .filter(([key, value]) => key.startsWith("build:") && value !== undefined)
        .map(([key, value]) => [key.slice(6), value]),
    ),
    stages: stages(""),
    ...some(
      "branches",
      all<Branch>("branches", "branch").map((one) => ({ ...one, stages: stages(one.id) })),
    ),
    outputs: all<Output>("axles", "axle").map((one) => ({ ...one, stages: stages(one.id) })),
    ...some("parts", all("parts", "part")),
    ...some("alternatives", all("ways", "way")),
    ...some("mounts", inOrder("mount:")),
  };
}

const countsIn = (stage: Stage): string =>
  displays[stage.kind](stage)
    .map((piece) => ("field" in piece ? String(piece.value) : piece.word === "drives" ? "→" : (piece.word ?? "")))
    .filter(Boolean)
    .join(" ");

type Data = Readonly<Record<string, unknown>>;
const isData = (value: unknown): value is Data => typeof value === "object" && value !== null && !Array.isArray(value);
const wordsOf = (name: string): string => name.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);

/** Fields whose own name would not do. */
const called: Readonly<Record<string, string>> = {
  title: "Its name",
  target: "The range that you want",
  rounding: "How figures are rounded",
  compare: "Which axles are compared",
  lengths: "The unit of length",
  centre: "Where the drive splits",
  headline: "The axle that a headline is about",
};
const lists: Readonly<Record<string, string>> = { ways: "other ways to build it" };

/** Fields whose value says enough. */
const bare = new Set(["is", "wheel", "kind", "of"]);

/** What stands in a list of units by its id, as somebody would call it. */
function nameOf(id: string, units: Units): string {
  for (const kind of ["stage", "axle", "branch", "part", "way"]) {
    const value = units.get(`${kind}:${id}`);
    if (!isData(value)) continue;
    const { label, name } = value;
    const own = typeof label === "string" ? label : typeof name === "string" ? name : id;
    return kind === "stage" ? `${own} ${countsIn(value as unknown as Stage)}` : own;
  }
  return id;
}

/** A value as somebody would say it. */
function plain(value: unknown): string {
  if (Array.isArray(value)) return value.map(plain).join(", ");
  // One of a few words that the document knows.
  if (typeof value === "string" && /^[a-z]+([A-Z][a-z]+)+$/.test(value)) return wordsOf(value);
  if (!isData(value)) return typeof value === "boolean" ? (value ? "yes" : "no") : String(value);
  const { amount, currency, from, to, ...others } = value;
  if (amount !== undefined) return `${plain(amount)} ${plain(currency ?? "")}`;
  const { minimumFractionDigits: least, maximumFractionDigits: most, ...rest } = others;
  const digits = least === most ? plain(most) : `${plain(least ?? 0)} to ${plain(most)}`;
  return [
    ...(from === undefined ? [] : [`${plain(from)} to ${plain(to)}`]),
    ...(most === undefined ? [] : [`${digits} digits after the point`]),
    ...Object.entries(rest)
      .filter(([key]) => !/^(id|label|name|stage)$/.test(key))
      .map(([key, one]) => (bare.has(key) ? plain(one) : `${wordsOf(key)} ${plain(one)}`)),
  ].join(", ");
}

/** What a unit is called. */
export function unitName(key: string, units: Units): string {
  const [kind, ...rest] = key.split(":");
  const id = rest.join(":");
  const { label, name } = (units.get(key) ?? {}) as Data;
  const own = typeof label === "string" ? label : typeof name === "string" ? name : id;
  const field = wordsOf(id);
  return (
    {
      shaft: id
        ? `Which stages ${nameOf(id, units)} has, and their order`
        : "Which stages stand after the motor, and their order",
      list: `Which ${lists[id] ?? id} there are`,
      mount: `How ${nameOf(id, units)} is mounted`,
      build: called[id] ?? field.charAt(0).toUpperCase() + field.slice(1),
    }[kind!] ?? own
  );
}

/** What a unit comes to, in few words. */
export function unitText(key: string, units: Units): string {
  const value = units.get(key);
  if (value === undefined) return "not there";
  if (key.startsWith("stage:")) return countsIn(value as Stage);
  const text = Array.isArray(value)
    ? value.map((one) => nameOf(String(one), units)).join(", ") || "none"
    : plain(value) || "there";
  return text.length > 90 ? `${text.slice(0, 90)} …` : text;
}
