/** What every stage can say, whatever its kind. */
export interface StageBase {
  /** The name that addresses, mounts and references go by: small letters, digits and single hyphens, a letter first. */
  readonly id: string;
  /** What a reader is shown; the id where it is not given. */
  readonly label?: string;
  /** Stages of one group are totalled together: "gearbox", "axle". */
  readonly group?: string;
  /** Whether the stage turns its output against its input. Wins over what its kind would say. */
  readonly reverses?: boolean;
  /** How many of this stage a vehicle takes: one, one for each axle, one for each wheel. */
  readonly per?: "vehicle" | "axle" | "wheel";
  /** The ids of the parts that are fitted to it. */
  readonly fitted?: readonly string[];
}

/** +1: the output turns with the input. −1: against it. 0: nobody has established it. */
export type Turn = 1 | -1 | 0;

/** One way a stage with a lever can stand: with stages of its own, or with its output let go of or held. */
export interface Position<S = StageBase> {
  /** Its name among the positions of its stage. */
  readonly id: string;
  /** What a reader is shown; the id where it is not given. */
  readonly label?: string;
  /** What stands in the drive in this position, in the order of drive; none where it is released. */
  readonly stages?: readonly S[];
  /** Nothing is driven: what stands behind turns as it likes, or is held still. */
  readonly released?: "free" | "held";
}
