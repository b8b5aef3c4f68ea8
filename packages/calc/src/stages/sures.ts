import { sure as belt } from "./belt.js";
import { sure as cycloidal } from "./cycloidal.js";
import { sure as measured } from "./measured.js";
import { sure as pair } from "./pair.js";
import { sure as planetary } from "./planetary.js";
import { sure as printed } from "./printed.js";
import { sure as selectable } from "./selectable.js";
import { sure as train } from "./train.js";
import { sure as worm } from "./worm.js";
import type { Sure } from "./facets.js";
import type { Stage, StageKind, StageOf } from "./kinds.js";

const table: { readonly [Kind in StageKind]: Sure<StageOf<Kind>> } = {
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

/** Whether a stage of each kind is surely without error. */
export const sures = table as Readonly<Record<StageKind, Sure<Stage>>>;
