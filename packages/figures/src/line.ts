/** Where each line of a text begins. */
export const lineStartsOf = (text: string): readonly number[] => [
  0,
  ...[...text.matchAll(/\r\n|\r|\n/g)].map((end) => end.index + end[0].length),
];

/** The line and the column of a place. Both count from 1. */
export function placeAt(offset: number, starts: readonly number[]): { readonly line: number; readonly column: number } {
  let [low, high] = [0, starts.length];
  while (low + 1 < high) {
    const middle = (low + high) >> 1;
    if (starts[middle]! <= offset) low = middle;
    else high = middle;
  }
  return { line: low + 1, column: offset - starts[low]! + 1 };
}
