/** What every stage can say, whatever its kind. */
export interface StageBase {
  readonly id: string;
  readonly label?: string;
  /** Stages of one group are totalled together: "gearbox", "axle". */
  readonly group?: string;
  /** Whether the stage turns its output against its input. Wins over what its kind would say. */
  readonly reverses?: boolean;
  /** How many of this stage a vehicle takes: one, one for each axle, one for each wheel. */
  readonly per?: "vehicle" | "axle" | "wheel";
}

/** +1: the output turns with the input. −1: against it. 0: nobody has established it. */
export type Turn = 1 | -1 | 0;

/** One way a stage with a lever can stand: with stages of its own, or with its output let go of or held. */
export interface Position<S = StageBase> {
  readonly id: string;
  readonly label?: string;
  readonly stages?: readonly S[];
  readonly released?: "free" | "held";
}
