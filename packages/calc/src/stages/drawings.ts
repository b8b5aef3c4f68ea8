import { drawn as belt } from "./belt.js";
import { drawn as cycloidal } from "./cycloidal.js";
import { drawn as measured } from "./measured.js";
import { drawn as pair } from "./pair.js";
import { drawn as planetary } from "./planetary.js";
import { drawn as printed } from "./printed.js";
import { drawn as selectable } from "./selectable.js";
import { drawn as train } from "./train.js";
import { drawn as worm } from "./worm.js";
import type { Drawn } from "./facets.js";
import type { Stage, StageKind, StageOf } from "./kinds.js";

const table: { readonly [Kind in StageKind]: Drawn<StageOf<Kind>> } = {
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

/** What is drawn of each kind. */
export const drawings = table as Readonly<Record<StageKind, Drawn<Stage>>>;
