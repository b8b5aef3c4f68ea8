import { needs as belt } from "./belt.js";
import { needs as cycloidal } from "./cycloidal.js";
import { needs as measured } from "./measured.js";
import { needs as pair } from "./pair.js";
import { needs as planetary } from "./planetary.js";
import { needs as printed } from "./printed.js";
import { needs as selectable } from "./selectable.js";
import { needs as train } from "./train.js";
import { needs as worm } from "./worm.js";
import type { Needs } from "./facets.js";
import type { Stage, StageKind, StageOf } from "./kinds.js";

const table: { readonly [Kind in StageKind]: Needs<StageOf<Kind>> } = {
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

/** What each kind takes. */
export const needed = table as Readonly<Record<StageKind, Needs<Stage>>>;
