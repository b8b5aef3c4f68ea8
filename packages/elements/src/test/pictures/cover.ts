import { randomFrom } from "../drives.js";

/** What may be combined: by name, what each can be. */
export type Factors = Readonly<Record<string, readonly string[]>>;
export type Combination = Readonly<Record<string, string>>;

// Values may have blanks in them.
const between = "\n";
const pairsOf = (names: readonly string[], combination: Combination): string[] =>
  names.flatMap((one, n) =>
    names.slice(n + 1).map((other) => `${one}=${combination[one]}${between}${other}=${combination[other]}`),
  );

/** Combinations in which any two values of two factors stand together at least once: greedily, from a seed. */
export function pairwise(factors: Factors, seed: number): readonly Combination[] {
  const random = randomFrom(seed);
  const names = Object.keys(factors);
  const drawn = (): Combination =>
    Object.fromEntries(names.map((name) => [name, factors[name]![random(factors[name]!.length)]!]));
  const wanted = new Set(
    names.flatMap((one, n) =>
      names
        .slice(n + 1)
        .flatMap((other) =>
          factors[one]!.flatMap((a) => factors[other]!.map((b) => `${one}=${a}${between}${other}=${b}`)),
        ),
    ),
  );
  const chosen: Combination[] = [];
  while (wanted.size) {
    // One pair that is missing is put in; the rest is the best of some that are drawn.
    const [first] = wanted;
    const fixed = Object.fromEntries(first!.split(between).map((pair) => pair.split("=") as [string, string]));
    const tries = Array.from({ length: 30 }, () => ({ ...drawn(), ...fixed }));
    const worth = (one: Combination): number => pairsOf(names, one).filter((pair) => wanted.has(pair)).length;
    const best = tries.reduce((a, b) => (worth(b) > worth(a) ? b : a));
    for (const pair of pairsOf(names, best)) wanted.delete(pair);
    chosen.push(best);
  }
  return chosen;
}

/** Every combination there is. */
export const product = (factors: Factors): readonly Combination[] =>
  Object.entries(factors).reduce<Combination[]>(
    (all, [name, values]) => all.flatMap((one) => values.map((value) => ({ ...one, [name]: value }))),
    [{}],
  );
