/** A word longer than this is no slip of the hand. */
const longest = 100;
/** No more than this many are offered. */
const most = 3;

/** How many letters left out, put in, replaced or swapped lie between two words (Damerau; neighbours are swapped once). */
export function slipsBetween(one: string, other: string): number {
  const [a, b] = [[...one], [...other]];
  let last: number[] = [];
  let row = Array.from({ length: b.length + 1 }, (_, n) => n);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const cost = a[i - 1] === b[j - 1] ? 0 : 1;
      let least = Math.min(row[j]! + 1, next[j - 1]! + 1, row[j - 1]! + cost);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) least = Math.min(least, last[j - 2]! + 1);
      next.push(least);
    }
    [last, row] = [row, next];
  }
  return row[b.length]!;
}

/**
 * The known words nearest to what was found: all that are the fewest slips away, three at the most, in their own order. The
 * case of letters counts as nothing here: only what is found wrong is looked up. Nothing where every known word is as far as
 * a new one would be.
 *
 * @example
 * nearestTo("figur", ["figure", "of", "with"]); // => ["figure"]
 * nearestTo("taget", ["target", "title"]); // => ["target"]
 * nearestTo("colour", ["of", "with"]); // => []
 */
export function nearestTo(found: unknown, known: Iterable<string>): string[] {
  if (typeof found !== "string" || !found || found.length > longest) return [];
  const word = found.toLowerCase();
  let least = Math.max(1, Math.floor(word.length / 3));
  let nearest: string[] = [];
  for (const one of known) {
    if (Math.abs(one.length - word.length) > least) continue;
    const slips = slipsBetween(word, one.toLowerCase());
    if (slips > least) continue;
    if (slips < least) nearest = [];
    least = slips;
    nearest.push(one);
  }
  return nearest.slice(0, most);
}
