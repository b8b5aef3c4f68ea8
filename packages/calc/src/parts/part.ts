import { partFaults, readJson, ShapeReader } from "../document/index.js";
import { pointerTo, type Part } from "../drivetrain/index.js";
import type { Finding, FindingCode, FindingValues } from "../stages/index.js";

/** What the shape of a list of parts cannot show: ids of their own, one pitch a part, and what its kind needs. */
function checkParts(parts: readonly Part[], reader: ShapeReader): void {
  const error = (n: number, code: FindingCode, field: string, values: FindingValues) =>
    reader.say("error", "meaning", code, `/${n}${pointerTo("", field)}`, values);
  const seen = new Set<string>();
  for (const [n, { id }] of parts.entries()) {
    if (seen.has(id)) error(n, "id-repeated", "id", { id });
    seen.add(id);
  }
  for (const { n, code, field, values } of partFaults(parts)) error(n, code, field, values);
}

/**
 * Reads a list of parts strictly. Never throws: whatever is wrong is a finding.
 *
 * @param json JSON text, or the data that it stands for
 * @returns `parts`, a copy, exactly when no finding is an error
 *
 * @example
 * const { parts, findings } = readParts([{ id: "p15", is: "pinion", teeth: "15", module: "0.8" }, { id: "s62", is: "spur" }]);
 * parts; // => undefined
 * findings.map(({ code, at }) => [code, at]); // => [["part-incomplete", "/1/teeth"]]
 */
export function readParts(json: unknown): { readonly parts?: readonly Part[]; readonly findings: readonly Finding[] } {
  const reader = new ShapeReader();
  try {
    const found = typeof json === "string" ? readJson(json) : { data: json };
    if ("fault" in found) return { findings: [found.fault] };
    const parts = reader.read(found.data, "[part]0-10000") as Part[];
    if (!reader.failed) checkParts(parts, reader);
    if (!reader.failed) return { parts, findings: reader.findings };
  } catch {
    reader.say("error", "shape", "not-data", "");
  }
  return { findings: reader.findings };
}

/** What is known of the pieces of a part in a build. */
export interface Held {
  /** How many its place takes: a part that is called fitted, without a count, is there as often. */
  readonly fitted?: number;
  /** How many other places hold. */
  readonly elsewhere?: number;
}

/**
 * The pieces of a part that are there to be used: what its count says, else its status (owned, ordered and spare are one
 * piece, fitted as many as its place takes), less what other places hold. Whole pieces, never below none.
 *
 * @example
 * ownedOf({ id: "p15", is: "pinion", owned: 3 }, { elsewhere: 2 }); // => 1
 * ownedOf({ id: "p15", is: "pinion", status: "spare" }); // => 1
 * ownedOf({ id: "p15", is: "pinion", available: true }); // => 0
 */
export function ownedOf({ owned, status }: Part, { fitted = 1, elsewhere = 0 }: Held = {}): number {
  const said = owned ?? (status === "fitted" ? fitted : status ? 1 : 0);
  return Math.max(0, said - elsewhere);
}

/**
 * Whether a part can be had: nothing of it is lacking, or it is on sale. Undefined where nobody has said. What is known only
 * as a piece that is held elsewhere, without a price, cannot be had.
 *
 * @param lacking how many pieces more than there are would be needed
 *
 * @example
 * canBeHad({ id: "p15", is: "pinion", owned: 1, available: false }); // => true
 * canBeHad({ id: "p15", is: "pinion", owned: 1, available: false }, 1); // => false
 */
export function canBeHad(part: Part, lacking = ownedOf(part) > 0 ? 0 : 1): boolean | undefined {
  if (lacking <= 0) return true;
  return part.available ?? (ownedOf(part) > 0 && !part.price ? false : undefined);
}

/** The currency that most prices are in; of equally many, the first by its letters. */
export function currencyOf(parts: readonly Part[]): string {
  const seen = new Map<string, number>();
  for (const { price } of parts) if (price) seen.set(price.currency, (seen.get(price.currency) ?? 0) + 1);
  return [...seen].sort((a, b) => b[1] - a[1] || (a[0] < b[0] ? -1 : 1))[0]?.[0] ?? "";
}
