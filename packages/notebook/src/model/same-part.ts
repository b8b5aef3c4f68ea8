import type { Part } from "@meshwright/calc/drivetrain";
import { lengthOf, rational } from "@meshwright/calc/exact";

// Which part of the shelf a row of a sheet means, where the sheet gives it no id: one of the same name or number of which
// nothing is said that differs.

/** What may change on a part that stays the same: what it costs, where it is to be had, and what the builder has of it. */
const passing: ReadonlySet<string> = new Set<keyof Part>([
  "stage",
  "price",
  "source",
  "available",
  "pack",
  "owned",
  "status",
  "pieces",
  "per",
]);

const naming: ReadonlySet<string> = new Set<keyof Part>(["id", "name", "number"]);

/** A value in one way of writing: "5 mm" and "5.0 mm" are one length. */
function plain(value: unknown): string {
  const text = String(value);
  if (!/^[-+]?[\d.]/.test(text)) return text;
  const [, number, unit] = /^(\S+)( ?[a-z]+)?$/.exec(text) ?? [];
  try {
    return unit ? `${lengthOf(text).toFraction()} mm` : rational(number ?? text).toFraction();
  } catch {
    return text;
  }
}

/** Whether two values of a part say the same. */
function same(one: unknown, other: unknown): boolean {
  if (typeof one !== "object" || typeof other !== "object" || !one || !other)
    return one === other || (one !== undefined && other !== undefined && plain(one) === plain(other));
  const [a, b] = [one, other] as Readonly<Record<string, unknown>>[];
  return Object.keys({ ...a, ...b }).every((key) => same(a![key], b![key]));
}

const facts = new WeakMap<Part, ReadonlyMap<string, unknown>>();

/** What a part is, by the field; a pitch of teeth is one thing, however it is given. */
function factsOf(part: Part): ReadonlyMap<string, unknown> {
  let known = facts.get(part);
  if (known) return known;
  const { module, diametralPitch, ...rest } = part;
  const entries = Object.entries(rest).filter(
    ([field, value]) => value !== undefined && !passing.has(field) && !naming.has(field),
  );
  const pitch =
    module !== undefined
      ? [["toothed", `module ${plain(module)}`] as const]
      : diametralPitch !== undefined
        ? [["toothed", `DP ${plain(diametralPitch)}`] as const]
        : [];
  facts.set(part, (known = new Map<string, unknown>([...entries, ...pitch])));
  return known;
}

/** Whether two parts are said to differ in what they are. */
function differ(one: Part, other: Part): boolean {
  const others = factsOf(other);
  return [...factsOf(one)].some(([field, value]) => others.has(field) && !same(value, others.get(field)));
}

/** Whether both say the same of what they are, no more and no less. */
const isAlike = (one: Part, other: Part): boolean => factsOf(one).size === factsOf(other).size && !differ(one, other);

/** What parts are looked up by. */
const keysOf = ({ number, name = "", is }: Part): readonly string[] =>
  number === undefined ? [`${is} ${name}`] : [`${is} ${name}`, `number ${number}`];

/** Parts of a shelf, to be found by what they are; each once. */
export class Known {
  readonly #by = new Map<string, Map<number | undefined, Part[]>>();
  readonly #found = new Set<Part>();

  constructor(parts: readonly Part[]) {
    for (const part of parts)
      for (const key of keysOf(part)) {
        const byTeeth = this.#by.get(key) ?? new Map<number | undefined, Part[]>();
        this.#by.set(key, byTeeth);
        byTeeth.set(part.teeth, [...(byTeeth.get(part.teeth) ?? []), part]);
      }
  }

  /** The one part that another can be; nothing where there is none, or where several could be meant. */
  find(part: Part): Part | undefined {
    const { teeth, number } = part;
    const all = keysOf(part).flatMap((key) => {
      const byTeeth = this.#by.get(key);
      const counts = teeth === undefined ? [...(byTeeth?.keys() ?? [])] : [teeth, undefined];
      return counts.flatMap((count) => byTeeth?.get(count) ?? []);
    });
    const free = [...new Set(all)].filter(
      (one) =>
        !this.#found.has(one) &&
        (one.number === undefined || number === undefined || one.number === number) &&
        !differ(one, part),
    );
    const found = free.find((one) => isAlike(one, part)) ?? (free.length === 1 ? free[0] : undefined);
    if (found) this.leaveOut(found);
    return found;
  }

  /** A part that was found otherwise is found no more. */
  leaveOut(part: Part): void {
    this.#found.add(part);
  }
}

/** A part with what another says of it. What that leaves open stays; where it is said to be something else, only what the builder has. */
export function updated(before: Part, part: Part): Part {
  if (differ(before, part)) {
    const kept = Object.entries(before).filter(([field]) => passing.has(field));
    return { ...Object.fromEntries(kept), ...part };
  }
  return { ...before, ...part };
}

/** Whether both say the same in all that they say. */
export const isSame = (one: Part, other: Part): boolean => same(one, other);
