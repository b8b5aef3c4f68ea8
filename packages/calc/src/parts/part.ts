import { ShapeReader } from "../document/index.js";
import { pointerTo, type Part } from "../drivetrain/index.js";
import type { Finding, FindingCode, FindingValues, PartKind } from "../stages/index.js";
import { rational } from "../exact/index.js";
import { ceilOf } from "../gears/index.js";

/** Fields without which nothing can be done with a part of a kind. */
const needed: Readonly<Partial<Record<PartKind, readonly (keyof Part)[]>>> = {
  pinion: ["teeth"],
  spur: ["teeth"],
  gear: ["teeth"],
  pulley: ["teeth"],
  worm: ["teeth"],
  set: ["driver", "driven"],
  hub: ["driver", "driven"],
  planetary: ["driver", "driven"],
  wheel: ["diameter"],
  sleeve: ["bore", "outside"],
  plate: ["circles"],
};

/** What the shape of a list of parts cannot show: ids of their own, one pitch a part, and what its kind needs. */
function checkParts(parts: readonly Part[], reader: ShapeReader): void {
  const seen = new Set<string>();
  for (const [n, part] of parts.entries()) {
    const error = (code: FindingCode, field: string, values: FindingValues) =>
      reader.say("error", "meaning", code, `/${n}${pointerTo("", field)}`, values);
    if (seen.has(part.id)) error("id-repeated", "id", { id: part.id });
    seen.add(part.id);
    for (const field of needed[part.is] ?? [])
      if (part[field] === undefined) error("part-incomplete", field, { is: part.is, field });
    if (part.module !== undefined && part.diametralPitch !== undefined) error("pitch-twice", "diametralPitch", {});
  }
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
    const parts = reader.read(typeof json === "string" ? JSON.parse(json) : json, "[part]0-10000") as Part[];
    if (!reader.failed) checkParts(parts, reader);
    if (!reader.failed) return { parts, findings: reader.findings };
  } catch {
    reader.say("error", "shape", "not-data", "");
  }
  return { findings: reader.findings };
}

/** Whether any piece is owned or ordered: a status says so where no number does. */
const isOwned = ({ owned, status }: Part): boolean => (owned ?? (status ? 1 : 0)) > 0;

/** Whether a part can be had: it is owned or ordered, or on sale. Undefined where nobody has said. */
export const canBeHad = (part: Part): boolean | undefined => isOwned(part) || part.available;

/**
 * What it takes to have a part, for the order of a search: whether it is new, its price in thousandths (rounded up) in one
 * currency, and whether it has none.
 *
 * @example
 * const price = { amount: "4.20", currency: "EUR" };
 * costOf({ id: "p15", is: "pinion", price }, "EUR"); // => { fresh: 1, amount: 4200, unpriced: 0 }
 * costOf({ id: "p15", is: "pinion", price }, "GBP"); // => { fresh: 1, amount: 0, unpriced: 1 }
 * costOf({ id: "p15", is: "pinion", owned: 1 }, "EUR"); // => { fresh: 0, amount: 0, unpriced: 0 }
 */
export function costOf(part: Part, currency: string): { fresh: number; amount: number; unpriced: number } {
  const { price } = part;
  if (isOwned(part)) return { fresh: 0, amount: 0, unpriced: 0 };
  if (price?.currency !== currency) return { fresh: 1, amount: 0, unpriced: 1 };
  return { fresh: 1, amount: ceilOf(rational(price.amount).times(1000)), unpriced: 0 };
}
