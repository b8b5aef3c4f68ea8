import { shape as belt } from "./belt.js";
import { shape as cycloidal } from "./cycloidal.js";
import { shape as measured } from "./measured.js";
import { shape as pair } from "./pair.js";
import { shape as planetary } from "./planetary.js";
import { shape as printed } from "./printed.js";
import { shape as selectable } from "./selectable.js";
import { shape as train } from "./train.js";
import { shape as worm } from "./worm.js";
import type { Shape } from "./facets.js";
import type { StageKind } from "./kinds.js";

/** The fields of each kind beside those that every stage has. */
export const stageShapes: Readonly<Record<StageKind, Shape>> = {
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
