import { MeshwrightError } from "@meshwright/calc/exact";
import { type Batch, findPairs, type FoundPair, nearMisses } from "@meshwright/calc/search";
import type { Asked } from "./question.js";

/** What has been found up to now. */
export interface Results {
  readonly found: readonly FoundPair[];
  readonly missed: readonly FoundPair[];
  /** Whether there may be near misses beyond those that were asked for. */
  readonly more: boolean;
  /** From 0 to 1. */
  readonly progress: number;
  readonly done: boolean;
  /** What kept it from being looked through. */
  readonly fault?: MeshwrightError;
}

/** As long as the page is held at a time, in milliseconds; the longest that one may notice is 50. */
const slice = 12;

const nextTurn = (): Promise<void> => new Promise((resolve) => setTimeout(resolve));

/** A search for pairs that goes on a little at a time: all that are looked for, and of the near misses as many as are asked for. */
export class Search {
  readonly #signal: AbortSignal;
  readonly #tell: (results: Results) => void;
  readonly #pairs: Generator<Batch<FoundPair>, void>;
  readonly #misses: Generator<Batch<FoundPair>, void>;
  readonly #found: FoundPair[] = [];
  readonly #missed: FoundPair[] = [];
  #wanted: number;
  #more = true;

  /**
   * @param misses how many near misses are wanted at first
   * @param tell is given the results up to then; the last time with `done`
   */
  constructor({ question }: Asked, signal: AbortSignal, misses: number, tell: (results: Results) => void) {
    this.#pairs = findPairs(question);
    this.#misses = nearMisses(question);
    this.#signal = signal;
    this.#wanted = misses;
    this.#tell = tell;
  }

  /** Looks until all is found that is wanted. */
  async go(): Promise<void> {
    try {
      await this.#look(this.#pairs, this.#found, 0, () => true);
      await this.#look(this.#misses, this.#missed, 0.5, () => this.#missed.length < this.#wanted);
      this.#say(1, true);
    } catch (error) {
      if (!(error instanceof MeshwrightError)) throw error;
      this.#say(1, true, error);
    }
  }

  /** Looks for more near misses. */
  async further(count: number): Promise<void> {
    this.#wanted = this.#missed.length + count;
    await this.go();
  }

  async #look(
    batches: Generator<Batch<FoundPair>, void>,
    list: FoundPair[],
    start: number,
    on: () => boolean,
  ): Promise<void> {
    let until = performance.now() + slice;
    while (on() && !this.#signal.aborted) {
      const next = batches.next();
      if (next.done) {
        if (list === this.#missed) this.#more = false;
        return;
      }
      list.push(...next.value.found);
      if (performance.now() < until) continue;
      this.#say(start + next.value.progress / 2, false);
      await nextTurn();
      until = performance.now() + slice;
    }
  }

  #say(progress: number, done: boolean, fault?: MeshwrightError): void {
    if (this.#signal.aborted) return;
    const results = { found: this.#found, missed: this.#missed, more: this.#more, progress, done };
    this.#tell({ ...results, ...(fault && { fault }) });
  }
}
