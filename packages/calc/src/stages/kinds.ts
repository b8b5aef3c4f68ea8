import type { BeltStage } from "./belt.js";
import type { CycloidalStage } from "./cycloidal.js";
import type { MeasuredStage } from "./measured.js";
import type { PairStage } from "./pair.js";
import type { PlanetaryStage } from "./planetary.js";
import type { PrintedStage } from "./printed.js";
import type { SelectableStage } from "./selectable.js";
import type { TrainStage } from "./train.js";
import type { WormStage } from "./worm.js";

/** A stage of any kind. */
export type Stage =
  | PairStage
  | TrainStage
  | BeltStage
  | WormStage
  | PlanetaryStage
  | CycloidalStage
  | MeasuredStage<Stage>
  | PrintedStage
  | SelectableStage<Stage>;

/** The kinds of stage, by name. */
export type StageKind = Stage["kind"];

/** A stage of one kind. */
export type StageOf<Kind extends StageKind> = Extract<Stage, { readonly kind: Kind }>;
