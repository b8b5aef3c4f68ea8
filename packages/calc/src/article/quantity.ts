import { valueAt, type Build, type ChangeSet } from "../drivetrain/index.js";
import { rational, type Rational } from "../exact/index.js";
import type { ReportWords } from "../languages/index.js";
import { addressFault, lettersAt, singleFault, type Writer } from "../report/index.js";
import { changesAt } from "../search/index.js";
import { errorOf, type Finding } from "../stages/index.js";
import { said, type Attributes } from "./said.js";
import { type Speaker, type Unsaid } from "./speaker.js";
import { faultText, plainNumber, typedCounts, typedLength, typedNumber } from "./typed.js";

/** What is typed there. */
type Kind = "length" | "ratio" | "count" | "number" | "range" | "rolled";

const kinds: Readonly<Record<string, Kind>> = {
  size: "length",
  length: "length",
  ratio: "ratio",
  count: "count",
  whole: "count",
  positive: "number",
  number: "number",
  amount: "number",
  span: "range",
  target: "range",
  rolled: "rolled",
};

/** What may be typed at an address; nothing where no such value stands there. */
const kindAt = (build: Build, address: string): Kind | undefined => {
  const letters = lettersAt(build, address);
  const kind = letters === undefined || !Object.hasOwn(kinds, letters) ? undefined : kinds[letters]!;
  const value = valueAt(build, address);
  if (kind === "rolled") return value === undefined ? undefined : kind;
  if (kind === "range") return typeof value === "object" ? kind : value === undefined ? undefined : "number";
  return typeof value === "string" || typeof value === "number" ? kind : undefined;
};

/** What is wrong with the address of a quantity: the build has no such value, or it is no number. */
export function quantityFault(build: Build, of: string | undefined): Finding | undefined {
  if (of === undefined) return errorOf("meaning", "word-needed", "/of", { figure: "mw-quantity", field: "of" });
  if (kindAt(build, of)) return undefined;
  const missing = addressFault(build, of);
  const inner = missing ? undefined : singleFault(build, of);
  const nearest = missing?.nearest ?? inner?.nearest ?? [];
  return errorOf("meaning", "missing-address", "/of", { address: of, nearest });
}

/** What of a value is typed: of ground rolled its length, for the same turns. */
const typedIn = (value: unknown): unknown =>
  typeof value === "object" && value !== null && "length" in value ? value.length : value;

/** A value with the digits and the unit that it was typed with. */
export function quantityText(whole: unknown, writer: Writer): string {
  const value = typedIn(whole);
  if (typeof value === "object" && value !== null) {
    const { from, to } = value as { readonly from: string | number; readonly to: string | number };
    return writer.range(writer.given(from), writer.given(to));
  }
  const text = String(value).trim();
  const [, size, unit] = /^(\S+)\s+(mm|cm|m|in|ft)$/.exec(text) ?? [];
  return size ? `${writer.given(size)}\u00a0${unit}` : writer.given(text);
}

/** What `mw-quantity` says: one value of a build, as it was typed. */
export function sayQuantity({ evaluation: { build }, writer }: Speaker, attributes: Attributes): string | Unsaid {
  const of = said(attributes, "of");
  const fault = quantityFault(build, of);
  return fault ? { findings: [fault] } : quantityText(valueAt(build, of!), writer);
}

/** New values by address, or what is wrong with what was typed. */
export type TypedQuantity = { readonly changes: ChangeSet } | { readonly fault: string };

/** What somebody typed, as it has to stand in the document; the author's own value where it is the same letter by letter. */
function readNumber(text: string, before: unknown): string | number | undefined {
  const value = typedNumber(text);
  if (!value || value.sign <= 0) return undefined;
  const plain = plainNumber(text);
  return typeof before === "number" && String(Number(plain)) === plain ? Number(plain) : plain;
}

function readRatio(text: string): string | undefined {
  const plain = plainNumber(text).replace(/\s*:\s*/, ":");
  const [, value] = /^([^:]+?)(?::1)?$/.exec(plain) ?? [];
  const number = value === undefined ? undefined : typedNumber(value);
  return number && number.sign > 0 ? plain : undefined;
}

function readRange(text: string): readonly [string, string] | undefined {
  const number = String.raw`\d{1,12}(?:\.\d{1,12})?`;
  const [, from, to] = new RegExp(`^(${number})[^\\d.]{1,12}(${number})$`).exec(plainNumber(text)) ?? [];
  return from && to && rational(from).compare(to) <= 0 ? [from, to] : undefined;
}

/** The unit that a length stands in. */
const unitOf = (value: unknown): string => /(mm|cm|m|in|ft)\s*$/.exec(String(value))?.[1] ?? "mm";

/**
 * What somebody typed for a value of a build: a length in the unit that it names, or else in the one that stands there; digits
 * stay as they were typed.
 */
export function typedQuantity(
  { build, reports }: { readonly build: Build; readonly reports: ReportWords },
  address: string,
  text: string,
): TypedQuantity {
  const kind = kindAt(build, address)!;
  const before = valueAt(build, address);
  const wrong: TypedQuantity = { fault: faultText({ reports }, text, kind === "rolled" ? "length" : kind) };
  if (kind === "rolled") {
    const length = typedLength(text, unitOf(typedIn(before)));
    return length === undefined ? wrong : { changes: { [address]: { ...(before as object), length } } };
  }
  if (kind === "range") {
    const range = readRange(text);
    const ends = before as { readonly from: unknown; readonly to: unknown };
    if (!range) return wrong;
    return {
      changes: {
        [`${address}.from`]: readNumber(range[0], ends.from),
        [`${address}.to`]: readNumber(range[1], ends.to),
      },
    };
  }
  const [low, high] = typedCounts(text) ?? [];
  const value =
    kind === "length"
      ? typedLength(text, unitOf(before))
      : kind === "ratio"
        ? readRatio(text)
        : kind === "count"
          ? low === high
            ? low
            : undefined
          : readNumber(text, before);
  return value === undefined ? wrong : { changes: changesAt(build, address, value) };
}

/** A value one step of its last digit up or down, as it is typed; nothing where it would not stay above zero. */
export function steppedQuantity(whole: unknown, by: number): string | undefined {
  const value = typedIn(whole);
  if (typeof value === "object" || /[/:]/.test(String(value))) return undefined;
  const [, number = "", rest = ""] = /^\s*([\d.]+)(.*)$/.exec(String(value)) ?? [];
  if (!number) return undefined;
  const digits = number.split(".")[1]?.length ?? 0;
  const step: Rational = rational(1).over(rational(10).power(digits));
  const next = rational(number).plus(step.times(by));
  if (next.sign <= 0) return undefined;
  return next.toDecimal({ minimumFractionDigits: digits, maximumFractionDigits: digits }) + rest;
}
