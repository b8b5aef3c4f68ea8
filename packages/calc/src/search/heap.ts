type Before = (a: number, b: number) => boolean;

/** Lets the entry at `place` sink until none below comes before it. */
export function sink(heap: number[], place: number, before: Before): void {
  const one = heap[place]!;
  for (let child; (child = place * 2 + 1) < heap.length; place = child) {
    if (child + 1 < heap.length && before(heap[child + 1]!, heap[child]!)) child++;
    if (!before(heap[child]!, one)) break;
    heap[place] = heap[child]!;
  }
  heap[place] = one;
}

/** Makes a heap of a list, its first entry on top. */
export function heapify(heap: number[], before: Before): void {
  for (let place = heap.length >> 1; place--;) sink(heap, place, before);
}
