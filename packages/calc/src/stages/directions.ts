import { direction as belt } from "./belt.js";
import { direction as cycloidal } from "./cycloidal.js";
import { direction as measured } from "./measured.js";
import { direction as pair } from "./pair.js";
import { direction as planetary } from "./planetary.js";
import { direction as printed } from "./printed.js";
import { direction as selectable } from "./selectable.js";
import { direction as train } from "./train.js";
import { direction as worm } from "./worm.js";
import type { Direction } from "./facets.js";
import type { Stage, StageKind, StageOf } from "./kinds.js";

const table: { readonly [Kind in StageKind]: Direction<StageOf<Kind>> } = {
  pair,
  train,
  belt,
  worm,
  planetary,
  cycloidal,
  measured,
  published: printed,
  selectable,
};

/** What each kind does to the direction. */
export const directions = table as Readonly<Record<StageKind, Direction<Stage>>>;
