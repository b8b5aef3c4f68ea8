import { scalars } from "../../document/index.js";
import type { Part } from "../../drivetrain/index.js";

/** Text as an id may be written, as far as its letters are Latin. */
export function idFrom(text: string): string {
  const short = text.slice(0, 200).toLowerCase();
  const latin = /^[\x20-\x7e]*$/.test(short)
    ? short
    : short.normalize("NFKD").replace(/\p{M}/gu, "").toLowerCase().replace(/ß/g, "ss");
  const letters = latin
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-|-$/g, "")
    .slice(0, 60)
    .replace(/-$/, "");
  return /^\d/.test(letters) ? `part-${letters}` : letters;
}

const countsOf = ({ teeth, driver, driven, value }: Partial<Part>): string =>
  idFrom(
    [teeth ?? [driver, driven], value ?? []]
      .flat(2)
      .filter((one) => one !== undefined)
      .join("-"),
  ).replace(/^part-/, "");

/** Whether text is an id as it stands. */
export const isId = (text: string): boolean => scalars.id!.pattern!.test(text);

/** An id that stays as it is, and what one can be made of. */
export interface Named {
  readonly own?: string | undefined;
  readonly number?: string | undefined;
  readonly part: Partial<Part> & Pick<Part, "is">;
}

/**
 * Ids of their own for all rows: the sheet's where it is one and stands once; else of the number, else of the name, with the
 * counts where several rows share it, and at last with a number of its own.
 */
export function idsFor(rows: readonly Named[]): string[] {
  const taken = new Set<string>();
  const uses = new Map<string, number>();
  const bases = rows.map(({ own, number, part }) => {
    const base =
      (own !== undefined && isId(own) ? own : idFrom(own ?? "")) ||
      idFrom(number ?? "") ||
      idFrom(part.name ?? "") ||
      part.is;
    uses.set(base, (uses.get(base) ?? 0) + 1);
    return base;
  });
  const owns = new Map<string, number>();
  rows.forEach(({ own }, n) => {
    if (own !== undefined && own === bases[n] && !owns.has(own)) owns.set(own, n);
  });
  for (const own of owns.keys()) taken.add(own);
  const last = new Map<string, number>();
  return rows.map(({ part }, n) => {
    const base = bases[n]!;
    if (owns.get(base) === n) return base;
    const counts = countsOf(part);
    const isBare = base === part.is;
    // Cut where it is long, so that what is put behind it makes no id longer than ids are.
    const short = idFrom(base);
    const first =
      (uses.get(base)! > 1 || isBare) && counts && !base.endsWith(`-${counts}`) ? `${short}-${counts}` : short;
    let id = first;
    for (let k = last.get(first) ?? 2; taken.has(id); k += 1) {
      id = `${first}-${k}`;
      last.set(first, k + 1);
    }
    taken.add(id);
    return id;
  });
}
