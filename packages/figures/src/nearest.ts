/** How many slips lie between two words: letters left out, put in, replaced, or two neighbours swapped. */
export function slips(one: string, other: string): number {
  let before: number[] = [];
  let last = Array.from({ length: other.length + 1 }, (_, n) => n);
  for (let i = 1; i <= one.length; i++) {
    const row = [i];
    for (let j = 1; j <= other.length; j++) {
      let least = Math.min(row[j - 1]! + 1, last[j]! + 1, last[j - 1]! + (one[i - 1] === other[j - 1] ? 0 : 1));
      if (one[i - 1] === other[j - 2] && one[i - 2] === other[j - 1])
        least = Math.min(least, (before[j - 2] ?? Infinity) + 1);
      row.push(least);
    }
    [before, last] = [last, row];
  }
  return last[other.length]!;
}

/** The known words at the least distance, three at most. */
export function nearest(word: string, known: readonly string[]): readonly string[] {
  const asked = word.toLowerCase().slice(0, 100);
  const distances = known.map((one) => [one, slips(asked, one)] as const);
  const least = Math.min(...distances.map(([, distance]) => distance));
  return distances
    .filter(([, distance]) => distance === least)
    .map(([one]) => one)
    .slice(0, 3);
}
