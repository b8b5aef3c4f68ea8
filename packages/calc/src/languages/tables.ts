/**
 * A language's strings; or their values alone, in the order of the English ones, which is what the build makes of a
 * language's file: the names would be a third of it.
 */
export type Table<Strings> = Strings | readonly unknown[];

/** Puts the English names back to values that stand without theirs. */
function named(english: unknown, table: unknown): unknown {
  if (!Array.isArray(table) || Array.isArray(english)) return table;
  const entries = Object.entries(english as object).slice(0, table.length);
  return Object.fromEntries(entries.map(([name, one], n) => [name, named(one, table[n])]));
}

/** By the English list and the table: a part of a list asks for its own strings of the same table. */
const complete = new WeakMap<object, WeakMap<object, object>>();

/** A language's strings by their names; what a table of another version lacks is English. */
export function stringsFrom<Strings extends object>(english: Strings, table: Table<Strings>): Strings {
  let known = complete.get(english);
  if (!known) complete.set(english, (known = new WeakMap()));
  let strings = known.get(table);
  if (!strings) known.set(table, (strings = { ...english, ...(named(english, table) as Strings) }));
  return strings as Strings;
}

/** Strings in which a language may say something else, of the same shape. */
export type Widened<T> = T extends string
  ? string
  : T extends readonly string[]
    ? readonly string[]
    : T extends Readonly<Record<"other", string>>
      ? Forms
      : { readonly [Key in keyof T]: Widened<T[Key]> };

/** One sentence in the forms that a count can ask for, by the names of `Intl.PluralRules`. */
export type Forms = { readonly [form in Intl.LDMLPluralRule]?: string };
