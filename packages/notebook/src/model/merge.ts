import { readUnfinished } from "@meshwright/calc/document";
import type { Build, Measurement } from "@meshwright/calc/drivetrain";
import { newNotebook, type Fields, type Handed, type Notebook } from "./notebook.js";
import { buildOf, unitName, unitsOf, unitText } from "./units.js";

// Two people's notebooks of one drivetrain become a third: what only one changed since the file that both have is taken over,
// what both changed is asked about, and without such a file everything that differs is.

const text = (value: unknown): string => JSON.stringify(value) ?? "";
const same = (one: unknown, other: unknown): boolean => text(one) === text(other);

/** Something that both have changed. */
interface Question {
  readonly key: string;
  readonly name: string;
  readonly mine: string;
  readonly theirs: string;
}

export type Side = "mine" | "theirs";

/** Two notebooks side by side. */
export interface Merging {
  /** Since which file both were changed; none: it is not known who changed what. */
  readonly since: Handed | undefined;
  readonly questions: readonly Question[];
  /** What was taken over without asking: the name of each thing, and whose it is. */
  readonly taken: readonly { readonly name: string; readonly from: Side }[];
  /** The third notebook, or why there is none; every question has to be answered. */
  make(answers: Readonly<Record<string, Side>>, id: string): Notebook | string;
}

/** A state that a file holds for those who get it: what both have in common later. */
export function handedOut(notebook: Notebook, key: string, at: string): Partial<Fields> {
  const { build, post, title } = notebook;
  const handed: Handed = { key, at, title, ...(build && { build }), ...(post && { post }) };
  return { handed: [...(notebook.handed ?? []), handed].slice(-3) };
}

/** The last state that both notebooks have been in. */
const commonTo = (mine: Notebook, theirs: Notebook): Handed | undefined =>
  mine.handed?.findLast(({ key }) => theirs.handed?.some((one) => one.key === key));

/** Everything of a notebook that changes as one thing. */
const unitsIn = ({ build, post }: Pick<Notebook, "build" | "post">): Map<string, unknown> =>
  unitsOf(build).set("post", post);

function union<One>(...lists: readonly (readonly One[] | undefined)[]): readonly One[] | undefined {
  const all = new Map(lists.flatMap((list) => list ?? []).map((one) => [text(one), one]));
  return all.size ? [...all.values()] : undefined;
}

/** Compares two notebooks. */
export function merging(mine: Notebook, theirs: Notebook): Merging {
  const since = commonTo(mine, theirs);
  const [here, there, base] = [unitsIn(mine), unitsIn(theirs), since && unitsIn(since)];
  const questions: Question[] = [];
  const taken: { name: string; from: Side }[] = [];
  const settled = new Map<string, unknown>();
  for (const key of new Set([...here.keys(), ...there.keys()])) {
    const [one, other] = [here.get(key), there.get(key)];
    const name = key === "post" ? "The post" : unitName(key, one === undefined ? there : here);
    const isMine = base && same(other, base.get(key));
    // A part that lies on one shelf only lies on the third one, too.
    const isOnOneShelf = !base && key.startsWith("part:") && (one === undefined || other === undefined);
    if (same(one, other)) settled.set(key, one);
    else if (isOnOneShelf) settled.set(key, one ?? other);
    else if (!base && key === "list:parts")
      settled.set(key, [...new Set([...((one ?? []) as string[]), ...((other ?? []) as string[])])]);
    else if (base && (isMine || same(one, base.get(key)))) {
      settled.set(key, isMine ? one : other);
      taken.push({ name, from: isMine ? "mine" : "theirs" });
    } else
      questions.push({
        key,
        name,
        mine: key === "post" ? "as it is in yours" : unitText(key, here),
        theirs: key === "post" ? "as it is in theirs" : unitText(key, there),
      });
  }
  const make: Merging["make"] = (answers, id) => {
    const units = new Map(settled);
    for (const { key } of questions) {
      const side = answers[key];
      if (!side) return "Not every question is answered.";
      units.set(key, (side === "mine" ? here : there).get(key));
    }
    // A stage that only one of them has comes along where its shaft was taken from the other.
    for (const [key, value] of [...there, ...here])
      if (units.get(key) === undefined && key.startsWith("stage:")) units.set(key, value);
    const post = units.get("post") as Notebook["post"];
    units.delete("post");
    const measurements = union<Measurement>(mine.build?.measurements, theirs.build?.measurements);
    const reading =
      mine.build || theirs.build
        ? readUnfinished({ ...buildOf(units), ...(measurements && { measurements }) } as unknown as Build)
        : undefined;
    if (reading && !reading.ok)
      return `Together they make no drivetrain: ${reading.findings[0]?.message ?? ""} Choose otherwise.`;
    const fields: Partial<Fields> = {
      build: reading?.build,
      post,
      shelf: reading ? undefined : union(mine.shelf, theirs.shelf),
      onlyText: union(mine.onlyText, theirs.onlyText),
      bench: union(mine.bench, theirs.bench),
      runs: union(mine.runs, theirs.runs),
      versions: union(mine.versions, theirs.versions),
      assemblies: union(mine.assemblies, theirs.assemblies),
      orders: { ...theirs.orders, ...mine.orders },
      sheets: { ...theirs.sheets, ...mine.sheets },
      handed: union(theirs.handed, mine.handed)?.slice(-3),
    };
    const known = Object.entries(fields).filter(([, value]) => value !== undefined);
    return { ...newNotebook(id, `${mine.title}, merged`), ...Object.fromEntries(known) };
  };
  return { since, questions, taken, make };
}
