import { belt, type BeltStage } from "./belt.js";
import type { Kind } from "./kind.js";
import { pair, type PairStage } from "./pair.js";
import { planetary, type PlanetaryStage } from "./planetary.js";
import { published, type PublishedStage } from "./published.js";
import { selectable, type SelectableStage } from "./selectable.js";
import { train, type TrainStage } from "./train.js";
import { worm, type WormStage } from "./worm.js";

export type Stage =
  PairStage | TrainStage | BeltStage | WormStage | PlanetaryStage | PublishedStage | SelectableStage<Stage>;

const table = { pair, train, belt, worm, planetary, published, selectable };

/** Every kind by its name. */
export const kinds = table as unknown as Readonly<Record<Stage["kind"], Kind<Stage>>>;
