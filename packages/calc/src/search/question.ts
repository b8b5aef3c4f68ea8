import type { RationalInput } from "../exact/index.js";
import type { Cost, Order } from "./batch.js";
import type { Wanted } from "./wanted.js";

/** A pair or a set that a stage could have. */
export interface Candidate {
  readonly driver: number;
  readonly driven: number;
  readonly id?: string;
  readonly cost?: Cost;
}

/** What a stage may be: some pairs or sets, or any of these counts with any of those. */
export type StageChoice<C extends Candidate = Candidate> = {
  readonly id: string;
  /** The outputs that it drives; all where none is named. */
  readonly on?: readonly string[];
} & ({ readonly choose: readonly C[] } | { readonly drivers: readonly number[]; readonly drivens: readonly number[] });

/** A wheel that an output could have. */
export interface WheelCandidate {
  /** Text with a unit, or millimetres. */
  readonly diameter: string | number;
  readonly id?: string;
  readonly cost?: Cost;
}

export interface WantedOutput extends Wanted {
  readonly wheels?: readonly WheelCandidate[];
}

export interface TrainQuestion<C extends Candidate = Candidate> {
  readonly stages: readonly StageChoice<C>[];
  readonly outputs: readonly WantedOutput[];
  /** How much farther `of` may roll than `with`, as a share of `with`: 0.02 is 2 %. Ends included. Without wheels: gears alone. */
  readonly compare?: {
    readonly of: string;
    readonly with: string;
    readonly from: RationalInput;
    readonly to: RationalInput;
  };
  readonly order?: Order;
}
