import { shapes, stageShape, stagesOf, type Build, type Finder } from "../drivetrain/index.js";
import { inners, type Stage, type StageKind } from "../stages/index.js";
import { digits, hashOf } from "./link-text.js";
import { scalars } from "./scalars.js";

// What a reader's link may carry follows from the shape of what it changes: numbers, lengths, flags, words of a closed list, and
// ids that the author's document has. Words are the author's, and no link brings others.

/** Scalars whose text says a number and nothing else. */
const numeric = /^(count|sets|digits|whole|number|positive|length|size|ratio)$/;

/** The keys of the document itself that a link reaches: the others say what the author means, or has. */
const reached = /^(centre|target|wheelbase|motor|battery|controller|mounts)$/;

/** Shapes of what is the author's through and through, or is read in another way. */
const wordy = /^(build|stage|any|change|part|rounding)$/;

const longestList = 1000;

export const isObject = (value: unknown): value is Record<string, unknown> =>
  typeof value === "object" && value !== null && !Array.isArray(value);

/** Every id of the author's that a value may be. */
export const idsIn = (build: Build): ReadonlySet<string> =>
  new Set([
    ...stagesOf(build).map(({ stage }) => stage.id),
    ...[...build.outputs, ...(build.branches ?? []), ...(build.parts ?? [])].map(({ id }) => id),
  ]);

/** A shape taken apart: what of it a link can carry. */
interface Form {
  readonly name: string;
  readonly is: "number" | "id" | "flag" | "choice" | "list" | "map" | "span" | "object" | "words";
  readonly pattern?: RegExp | undefined;
  readonly choices?: readonly string[] | undefined;
  /** Of an entry of a list or map. */
  readonly item?: string | undefined;
  readonly fields?: Readonly<Record<string, string>> | undefined;
}

const forms = new Map<string, Form>();

/** Shapes never change: each is taken apart once. */
function formOf(shape: string): Form {
  let form = forms.get(shape);
  if (!form) forms.set(shape, (form = madeForm(shape.replace("!", ""))));
  return form;
}

function madeForm(name: string): Form {
  if (scalars[name]) {
    if (name === "id") return { name, is: "id" };
    return numeric.test(name) ? { name, is: "number", pattern: scalars[name].pattern } : { name, is: "words" };
  }
  if (name === "flag") return { name, is: "flag" };
  if (name === "span") return { name, is: "span", item: "positive", fields: shapes.span };
  const [, item] = /^\[(.+)\]\d+-\d+$/.exec(name) ?? [];
  if (item) return { name, is: "list", item };
  if (name[0] === "{") return { name, is: "map", item: name.slice(1, -1) };
  if (name.includes("|")) return { name, is: "choice", choices: name.split("|") };
  const fields = wordy.test(name) ? undefined : shapes[name];
  return fields ? { name, is: "object", fields } : { name, is: "words" };
}

/** What can be said of a value by its shape, without the words in it; undefined where nothing is left, or it has another shape. */
export function numbersOf(shape: string, value: unknown, ids?: ReadonlySet<string>): unknown {
  const { is, pattern, choices, item, fields } = formOf(shape);
  switch (is) {
    case "number":
      if (typeof value === "number") return Number.isFinite(value) ? value : undefined;
      return typeof value === "string" && value.length < 120 && pattern!.test(value) ? value : undefined;
    case "id":
      return typeof value === "string" && ids?.has(value) ? value : undefined;
    case "flag":
      return typeof value === "boolean" ? value : undefined;
    case "choice":
      return choices!.includes(value as string) ? value : undefined;
    case "list": {
      if (!Array.isArray(value) || value.length > longestList) return undefined;
      const list = value.map((one) => numbersOf(item!, one, ids));
      return list.every((one) => one !== undefined) ? list : undefined;
    }
    case "words":
      return undefined;
  }
  if (!isObject(value)) return is === "span" ? numbersOf(item!, value, ids) : undefined;
  if (is === "map")
    return ids && Object.keys(value).every((key) => ids.has(key)) ? entriesOf(value, () => item, ids) : undefined;
  return entriesOf(value, (key) => (Object.hasOwn(fields!, key) ? fields![key] : undefined), ids);
}

/** The entries of an object that hold no words; undefined where there are none. */
function entriesOf(value: object, shapeOf: (key: string) => string | undefined, ids?: ReadonlySet<string>) {
  const entries: [string, unknown][] = [];
  for (const [key, inner] of Object.entries(value)) {
    const shape = shapeOf(key);
    const one = shape === undefined ? undefined : numbersOf(shape, inner, ids);
    if (one !== undefined) entries.push([key, one]);
  }
  return entries.length ? Object.fromEntries(entries) : undefined;
}

/** Whether values of a shape can be carried at all. */
function isCarried(shape: string): boolean {
  const { is, item, fields } = formOf(shape);
  if (is === "words") return false;
  if (is === "list" || is === "map") return isCarried(item!);
  return is !== "object" || Object.values(fields!).some(isCarried);
}

const stageFields = new Map<StageKind, Readonly<Record<string, string>>>();

function fieldsOfKind(kind: StageKind): Readonly<Record<string, string>> {
  let fields = stageFields.get(kind);
  if (!fields) {
    const { id: _, kind: __, positions: ___, ...rest } = stageShape(kind);
    stageFields.set(kind, (fields = rest));
  }
  return fields;
}

/** The fields of a kind, beside positions, that hold stages: what was turned along with it, as it was then. */
export const stageFieldsOf = (kind: StageKind): readonly string[] =>
  Object.entries(fieldsOfKind(kind)).flatMap(([field, shape]) => (formOf(shape).item === "stage" ? [field] : []));

/** The fields of a stage that hold no words, without its id, kind and positions, and which of these is selected. */
export function fieldsOf(stage: Stage, ids?: ReadonlySet<string>): Record<string, unknown> {
  const fields = fieldsOfKind(stage.kind);
  const shapeOf = (key: string) => (key !== "selected" && Object.hasOwn(fields, key) ? fields[key] : undefined);
  return (entriesOf(stage, shapeOf, ids) ?? {}) as Record<string, unknown>;
}

/**
 * The shape of what stands at an address, where a link can carry it; of a whole stage, `stage`. Nothing for addresses that
 * lead nowhere, for the author's words, and for what lists hold stages in.
 */
export function shapeAt(find: Finder, address: string): string | undefined {
  const [id, field, part] = address.split(".") as [string, string?, string?];
  const spot = find(address) && find(id);
  if (!spot) return undefined;
  const { stage, pointer } = spot;
  if (stage && field === undefined) return "stage";
  const list = stage ? undefined : /^\/(output|branch)(?:e?s)\/\d+$/.exec(pointer)?.[1];
  const fields = stage ? fieldsOfKind(stage.kind) : list ? shapes[list]! : shapes.build!;
  const first = stage || list ? field : reached.test(id) ? id : undefined;
  if (first === undefined || first === "id" || !Object.hasOwn(fields, first)) return undefined;
  let shape = fields[first];
  for (const key of stage || list ? [part] : [field, part])
    if (shape !== undefined && key !== undefined) {
      const { item, fields: inner } = formOf(shape);
      shape = item ?? (inner && Object.hasOwn(inner, key) ? inner[key] : undefined);
    }
  return shape !== undefined && isCarried(shape) ? shape.replace("!", "") : undefined;
}

/** A value in letters that do not depend on the order of keys, nor on whether a number is written as text. */
const canonical = (value: unknown): string =>
  Array.isArray(value)
    ? `[${value.map(canonical).join()}]`
    : isObject(value)
      ? `{${Object.keys(value)
          .sort()
          .map((key) => `${key}:${canonical(value[key])}`)
          .join()}}`
      : String(value);

/** The numbers of a stage: what decides its figures. Of one with stages inside, which they are and where. */
const numbersIn = (stage: Stage): string => {
  const inside = inners[stage.kind]?.positions(stage);
  const places = inside?.map(({ id, released, stages = [] }) => [id, released, stages.map((one) => one.id)]);
  return canonical([stage.kind, fieldsOf(stage), places, (stage as { selected?: string }).selected]);
};

const checkOf = (text: string): string => digits(hashOf(text), 4);

/** A check of a stage as its author has it, with all that stands inside. */
export const checkOfStage = (stage: Stage): string => {
  const all = (one: Stage): string =>
    [
      numbersIn(one),
      ...(inners[one.kind]?.positions(one) ?? []).flatMap(({ stages = [] }) => (stages as Stage[]).map(all)),
    ].join();
  return checkOf(`${stage.id} ${all(stage)}`);
};

/** A check of the order in which stages stand. */
export const checkOfOrder = (...lists: readonly (readonly Stage[])[]): string =>
  checkOf(lists.map((list) => list.map(({ id }) => id).join()).join(";"));

/** Checks of what an address belongs to, as its author has it: the stage's own numbers, else the field's, else the document's key. */
export function checksIn(build: Build, find: Finder): (address: string) => string {
  const ids = idsIn(build);
  const known = new Map<string, string>();
  return (address) => {
    const [id, field] = address.split(".") as [string, string?];
    const spot = find(id);
    const isList = spot && Array.isArray(spot.holder);
    const unit = spot?.stage || !isList ? id : `${id}.${field}`;
    let check = known.get(unit);
    if (check === undefined) {
      const own = spot?.stage
        ? numbersIn(spot.stage)
        : canonical(numbersOf(shapeAt(find, unit)!, find.value(unit), ids));
      known.set(unit, (check = checkOf(`${unit} ${own}`)));
    }
    return check;
  };
}
