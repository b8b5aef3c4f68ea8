import { MeshwrightError } from "@meshwright/calc/exact";
import { findTrains, type Batch, type FoundTrain, type TrainQuestion } from "@meshwright/calc/search";

/** What has been found up to now. */
export interface Results {
  readonly found: readonly FoundTrain[];
  /** How many there are, once that is known. */
  readonly count: number | undefined;
  /** From 0 to 1. */
  readonly progress: number;
  /** Whether it looks at this moment. */
  readonly busy: boolean;
  /** Whether all has been found. */
  readonly whole: boolean;
  /** What kept it from being looked through. */
  readonly fault?: MeshwrightError;
}

/** As long as the page is held at a time, in milliseconds; the longest that one may notice is 50. */
const slice = 12;

const nextTurn = (): Promise<void> => new Promise((resolve) => setTimeout(resolve));

/** A search for trains that goes on a little at a time, as far as is asked for. */
export class Search {
  readonly question: TrainQuestion;
  readonly stages: readonly string[];
  readonly #signal: AbortSignal;
  readonly #tell: (results: Results) => void;
  readonly #batches: Generator<Batch<FoundTrain>, void>;
  readonly #found: FoundTrain[] = [];
  #count: number | undefined;
  #progress = 0;

  /** @param tell is given the results up to then, the last time when it rests */
  constructor(
    question: TrainQuestion,
    stages: readonly string[],
    signal: AbortSignal,
    tell: (results: Results) => void,
  ) {
    this.question = question;
    this.stages = stages;
    this.#batches = findTrains(question);
    this.#signal = signal;
    this.#tell = tell;
  }

  /** Looks until there are so many. */
  async until(wanted: number): Promise<void> {
    let whole = false;
    try {
      let end = performance.now() + slice;
      while (this.#found.length < wanted && !this.#signal.aborted) {
        const next = this.#batches.next();
        if (next.done) {
          whole = true;
          break;
        }
        const { found, progress, count } = next.value;
        this.#found.push(...found);
        this.#progress = progress;
        this.#count = count ?? this.#count;
        if (performance.now() < end) continue;
        this.#say({ busy: true, whole });
        await nextTurn();
        end = performance.now() + slice;
      }
      if (!this.#signal.aborted) this.#say({ busy: false, whole });
    } catch (error) {
      if (!(error instanceof MeshwrightError)) throw error;
      this.#say({ busy: false, whole: true, fault: error });
    }
  }

  #say(state: Pick<Results, "busy" | "whole" | "fault">): void {
    this.#tell({ found: this.#found, count: this.#count, progress: this.#progress, ...state });
  }
}
