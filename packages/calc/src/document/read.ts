import { rational } from "../exact/index.js";
import {
  findingOf,
  stageShapes,
  type Finding,
  type FindingCode,
  type FindingTerm,
  type FindingValues,
  type Shape,
  type Stage,
  type StageKind,
} from "../stages/index.js";
import { nearestTo } from "./nearest.js";
import { addressPattern, longestText, scalars, type Scalar } from "./scalars.js";
import { pointerTo, shapes, stageShape } from "../drivetrain/index.js";

const deepestStage = 50;
const deepestData = 250;
const mostData = 250_000;
/** Whoever mends a hundred places will look again. */
const mostFindings = 100;

/** What was found, in a few words. */
export const found = (value: unknown): string | FindingTerm => {
  if (value === undefined) return { term: "nothing" };
  if (Array.isArray(value)) return { term: "list", amount: value.length };
  if (typeof value === "object" && value) return { term: "object" };
  const text = typeof value === "string" ? JSON.stringify(value.slice(0, 40)) : String(value);
  return text.slice(0, 42);
};

/** A shape taken apart: one of a plain value, a list, a map, a choice, or an object by name. */
interface Form {
  readonly name: string;
  readonly scalar: Scalar | undefined;
  readonly list: { readonly item: Form; readonly from: number; readonly to: number } | undefined;
  readonly map: Form | undefined;
  readonly choices: readonly string[] | undefined;
}

interface Fields {
  readonly forms: ReadonlyMap<string, Form>;
  readonly required: readonly string[];
}

function formOf(shape: string): Form {
  const name = shape.replace("!", "");
  const [, item, from, to] = /^\[(.+)\](\d+)-(\d+)$/.exec(name) ?? [];
  return {
    name,
    scalar: scalars[name],
    list: item ? { item: formOf(item), from: +from!, to: +to! } : undefined,
    map: name[0] === "{" ? formOf(name.slice(1, -1)) : undefined,
    choices: name.includes("|") ? name.split("|") : undefined,
  };
}

const fieldsOf = (shape: Shape): Fields => ({
  forms: new Map(Object.entries(shape).map(([key, one]) => [key, formOf(one)])),
  required: Object.keys(shape).filter((key) => shape[key]!.endsWith("!")),
});

/**
 * Stages, and lists of parts, mounts and stages, that were read here and that nobody can change since, with what they were read as. When a
 * count is changed the others are not read again, and stay the same objects: whoever has worked something out of them knows them by that.
 */
const wellRead = new WeakMap<object, string>();
const lasting = new Set(["part", "mount", "stage"]);

function freeze(value: unknown): void {
  if (typeof value !== "object" || value === null) return;
  // Most of what a document holds are texts and numbers: they cost no call of their own.
  for (const one of Object.values(Object.freeze(value))) if (typeof one === "object") freeze(one);
}

/** Shapes never change: each is taken apart once. */
const known = new Map<string, Fields>();

function fieldsFor(name: string, shape: () => Shape): Fields {
  let fields = known.get(name);
  if (!fields) known.set(name, (fields = fieldsOf(shape())));
  return fields;
}

/**
 * Reads a value of a shape into a copy of its own, and gathers what is wrong with the shape. Counts become numbers; all
 * else stays as it was written.
 */
export class ShapeReader {
  readonly findings: Finding[] = [];
  /** Whether any finding is an error. */
  failed = false;
  readonly #path: (string | number)[] = [];
  readonly #newer: boolean;
  #left = mostData;

  /** @param newer the document is of a later minor version: keys that nobody here knows are passed over */
  constructor(newer = false) {
    this.#newer = newer;
  }

  /** Whether one more finding would be told. */
  get hasRoom(): boolean {
    return this.findings.length < mostFindings;
  }

  say(
    severity: Finding["severity"],
    about: Finding["about"],
    code: FindingCode,
    at: string,
    values?: FindingValues,
  ): void {
    const first = severity === "error" && !this.failed;
    if (first) this.failed = true;
    if (first || this.hasRoom) this.findings.push(findingOf(severity, about, code, at, values));
  }

  /** Reads the data of a build, or of what has another shape. */
  read(value: unknown, shape = "build"): unknown {
    return this.#read(formOf(shape), value, 0);
  }

  /** Reads the value of one field: of a stage of a kind, or of another object by its name. Says where there is no such field. */
  readField(of: string, shape: () => Shape, field: string, value: unknown): unknown {
    const { forms, required } = fieldsFor(of, shape);
    const form = forms.get(field);
    return this.#at(field, () => {
      if (value === undefined && required.includes(field)) return this.#wrong("missing", undefined, { field });
      if (value === undefined) return undefined;
      if (form) return this.#read(form, value, 0);
      return field.startsWith("x-") ? this.#any(value, 0) : this.#strange(field, forms);
    });
  }

  #strange(key: string, forms: Fields["forms"]): undefined {
    if (!this.hasRoom && this.failed) return;
    const names = [...forms.keys()];
    const values = { known: names, nearest: nearestTo(key, names) };
    if (this.#newer) this.#say("meaning", "unknown-key-passed", { ...values, found: found(key) }, "warning");
    else this.#wrong("unknown-key", key, values);
  }

  #say(
    about: Finding["about"],
    code: FindingCode,
    values: FindingValues,
    severity: Finding["severity"] = "error",
  ): undefined {
    this.say(severity, about, code, this.#path.reduce<string>(pointerTo, ""), values);
  }

  #wrong(code: FindingCode, value: unknown, values?: FindingValues): undefined {
    if (this.hasRoom || !this.failed) this.#say("shape", code, { ...values, found: found(value) });
  }

  #read(form: Form, value: unknown, depth: number): unknown {
    const { name, scalar, list, map, choices } = form;
    if (scalar) return this.#scalar(scalar, name, value);
    if (name === "flag") return typeof value === "boolean" ? value : this.#wrong("not-a-flag", value);
    if (name === "any") return this.#any(value, 0);
    if (name === "stage") return this.#stage(value, depth + 1);
    if (name === "span" && typeof value !== "object") return this.#scalar(scalars.positive!, "positive", value);
    if (choices)
      return choices.includes(value as string)
        ? value
        : this.#wrong("not-a-choice", value, { known: choices, nearest: nearestTo(value, choices) });
    if (list) {
      const { item, from, to } = list;
      const size = Array.isArray(value) ? value.length : -1;
      return size >= from && size <= to
        ? this.#list(item, value as unknown[], depth)
        : this.#wrong("not-a-list", value, { from, to });
    }
    if (typeof value !== "object" || value === null || Array.isArray(value)) return this.#wrong("not-an-object", value);
    return map ? this.#map(map, value) : this.#object(name, () => shapes[name]!, value, depth);
  }

  #list(item: Form, value: readonly unknown[], depth: number): unknown {
    const lasts = !depth && lasting.has(item.name) && `[${item.name}]`;
    if (lasts && wellRead.get(value) === lasts) return value;
    const copy: unknown[] = [];
    const [left, told] = [this.#left, this.findings.length];
    for (let n = 0; n < value.length; n++) {
      this.#path.push(n);
      copy.push(this.#read(item, value[n], depth));
      this.#path.pop();
    }
    return lasts ? this.#lasting(copy, lasts, left, told) : copy;
  }

  /** Keeps what nothing was told of. With data of others in it, it may be deep. */
  #lasting(copy: object, as: string, left: number, told: number): object {
    if (left !== this.#left || told !== this.findings.length || this.failed) return copy;
    freeze(copy);
    wellRead.set(copy, as);
    return copy;
  }

  /** Does something one step further down. */
  #at<T>(key: string | number, act: () => T): T {
    this.#path.push(key);
    const result = act();
    this.#path.pop();
    return result;
  }

  #scalar(scalar: Scalar, name: string, value: unknown): unknown {
    if (typeof value === "string") {
      const { pattern } = scalar;
      if (name === "format" && this.#newer) return value;
      // Characters are counted only where pairs of code units can make the difference.
      const fits = pattern
        ? value.length < 120 && pattern.test(value)
        : value.length <= longestText || (value.length <= longestText * 2 && [...value].length <= longestText);
      if (fits) return scalar.whole ? Number(value) : value;
    } else if (typeof value === "number") {
      const { from = NaN, above = NaN, to = Infinity, whole, among } = scalar;
      const fits = (value >= from || value > above) && value <= to && !(whole && value % 1);
      if (fits && (!among || among.includes(value))) {
        try {
          if (value % 1) rational(value);
        } catch {
          this.#say("meaning", "number-long", { found: String(value) });
        }
        return value;
      }
    }
    return this.#wrong(`not-${name}` as FindingCode, value, name === "text" ? { most: longestText } : undefined);
  }

  /** Data that is carried along: copied, so that nobody can change it behind our back. */
  #any(value: unknown, depth: number): unknown {
    if (typeof value === "object" && value) {
      const keys = Array.isArray(value) ? value.length : Object.keys(value).length;
      this.#left -= keys;
      if (depth > deepestData || this.#left < 0) return this.#say("meaning", "too-deep", { most: deepestData });
      const inner = (one: unknown, key: string | number) => {
        this.#path.push(key);
        const copy = this.#any(one, depth + 1);
        this.#path.pop();
        return copy;
      };
      // An own key such as __proto__ stays an own key.
      return Array.isArray(value)
        ? Array.from(value, inner)
        : Object.fromEntries(Object.entries(value).map(([key, one]) => [key, inner(one, key)]));
    }
    return value === null || typeof value === "string" || typeof value === "boolean" || Number.isFinite(value)
      ? value
      : this.#wrong("not-a-value", value);
  }

  #map(item: Form, value: object): unknown {
    const copy: Record<string, unknown> = {};
    for (const [key, one] of Object.entries(value)) {
      this.#path.push(key);
      if (addressPattern.test(key)) copy[key] = this.#read(item, one, 0);
      else this.#wrong("not-an-address", key);
      this.#path.pop();
    }
    return copy;
  }

  #object(name: string, shape: () => Shape, value: object, depth: number): unknown {
    const fields = fieldsFor(name, shape);
    const copy: Record<string, unknown> = {};
    for (const key of Object.keys(value)) {
      const one = (value as Record<string, unknown>)[key];
      if (one === undefined) continue;
      const form = fields.forms.get(key);
      this.#path.push(key);
      if (form) copy[key] = this.#read(form, one, depth);
      else if (key.startsWith("x-")) copy[key] = this.#any(one, 0);
      else this.#strange(key, fields.forms);
      this.#path.pop();
    }
    for (const key of fields.required)
      if (!Object.hasOwn(value, key) || (value as Record<string, unknown>)[key] === undefined)
        this.#wrong("missing", undefined, { field: key });
    return copy;
  }

  /** The key of a stage without a kind that is no field of any, and nearly reads "kind". */
  #slipOfKind(stage: object): string | undefined {
    const isField = (key: string) =>
      (Object.keys(stageShapes) as StageKind[]).some((kind) => Object.hasOwn(stageShape(kind), key));
    return Object.keys(stage).find((key) => nearestTo(key, ["kind"]).length > 0 && !isField(key));
  }

  #stage(value: unknown, depth: number): unknown {
    const kind = (value as Stage | null | undefined)?.kind;
    if (typeof kind !== "string" || !Object.hasOwn(stageShapes, kind)) {
      const names = Object.keys(stageShapes);
      const isObject = kind === undefined && typeof value === "object" && value !== null;
      const slip = isObject && this.hasRoom ? this.#slipOfKind(value) : undefined;
      if (slip !== undefined)
        return this.#at(slip, () => this.#wrong("unknown-key", slip, { known: ["kind"], nearest: ["kind"] }));
      return this.#at("kind", () =>
        this.#wrong("unknown-kind", kind, { known: names, nearest: nearestTo(kind, names) }),
      );
    }
    if (depth > deepestStage) return this.#say("meaning", "too-deep", { most: deepestStage });
    const isOuter = depth === 1;
    if (isOuter && wellRead.get(value as object) === "stage") return value;
    const [left, told] = [this.#left, this.findings.length];
    const copy = this.#object(`${kind} stage`, () => stageShape(kind), value as object, depth) as object;
    return isOuter ? this.#lasting(copy, "stage", left, told) : copy;
  }
}
