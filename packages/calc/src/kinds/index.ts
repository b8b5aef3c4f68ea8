/**
 * The kinds of stage, one file each. A new kind is one new file and one line here: reader, Schema, notation, stage editor
 * and documentation derive from its description.
 * @module
 */
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

export { Effect, type Unknown } from "./effect.js";
export type { Kind, Say, Shape } from "./kind.js";
export { printedInterval, type PrintedReading } from "./printed.js";
export { productOf } from "./product.js";
export type { Position } from "./selectable.js";
export type { Numeric, StageBase, Toothed, Turn } from "./stage.js";
export type { BeltStage, PairStage, PlanetaryStage, PublishedStage, SelectableStage, TrainStage, WormStage };
