/** What a search's inner loops give: nothing, but the chance for others to work, and to stop it. */
export type Pause = undefined;
export type Working<T> = Generator<Pause, T>;

/** So many small steps, and a search lets others work: a few milliseconds. */
const stepsAtOnce = 8192;

/** Counts the steps of a search. */
export class Pace {
  #steps = 0;

  /** Whether it is time to pause after so many more steps. */
  due(steps = 1): boolean {
    this.#steps += steps;
    if (this.#steps < stepsAtOnce) return false;
    this.#steps = 0;
    return true;
  }
}

/** Sorts in place as `Array.prototype.sort` does, equal ones staying in their order, with pauses. */
export function* sort<T>(list: T[], compare: (a: T, b: T) => number, pace: Pace): Working<T[]> {
  const run = 512;
  for (let start = 0; start < list.length; start += run) {
    const piece = list.slice(start, start + run).sort(compare);
    for (let n = 0; n < piece.length; n++) list[start + n] = piece[n]!;
    if (pace.due(piece.length * 9)) yield;
  }
  let from = list;
  let to: T[] = list.length > run ? new Array<T>(list.length) : list;
  for (let width = run; width < list.length; width *= 2) {
    for (let start = 0; start < list.length; start += 2 * width) {
      const middle = Math.min(start + width, list.length);
      const end = Math.min(start + 2 * width, list.length);
      let a = start;
      let b = middle;
      for (let n = start; n < end; n++) {
        to[n] = b >= end || (a < middle && compare(from[a]!, from[b]!) <= 0) ? from[a++]! : from[b++]!;
        if (pace.due()) yield;
      }
    }
    [from, to] = [to, from];
  }
  if (from !== list)
    for (let n = 0; n < list.length; n++) {
      list[n] = from[n]!;
      if (pace.due()) yield;
    }
  return list;
}

/** As many as are put in order at once. */
const held = 2 ** 15;

/**
 * Gives what a walk meets in order, however much that is, without holding all of it: where there is too much, the walk is
 * made again for what comes next.
 *
 * @param walk begins anew and calls `meet` with one after the other; no two of them equal
 */
export function* inOrder<T>(
  walk: (meet: (one: T) => void) => Working<void>,
  compare: (a: T, b: T) => number,
  pace: Pace,
  most = held,
): Generator<readonly T[] | Pause, void> {
  let last: T | undefined;
  for (;;) {
    let list: T[] = [];
    let limit: T | undefined;
    const keep = (one: T): void => {
      if (last !== undefined && compare(one, last) <= 0) return;
      if (limit !== undefined && compare(one, limit) >= 0) return;
      list.push(one);
    };
    let more = false;
    const cut = function* (): Working<void> {
      yield* sort(list, compare, pace);
      if (list.length <= most) return;
      more = true;
      list = list.slice(0, most);
      limit = list[most - 1];
    };
    const steps = walk(keep);
    for (let step = steps.next(); !step.done; step = steps.next()) {
      if (list.length > 2 * most) yield* cut();
      yield;
    }
    yield* cut();
    for (let n = 0; n < list.length; n += 1024) yield list.slice(n, n + 1024);
    if (!more) return;
    last = list.at(-1);
  }
}
