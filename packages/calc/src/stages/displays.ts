import { display as belt } from "./belt.js";
import { display as cycloidal } from "./cycloidal.js";
import { display as measured } from "./measured.js";
import { display as pair } from "./pair.js";
import { display as planetary } from "./planetary.js";
import { display as printed } from "./printed.js";
import { display as selectable } from "./selectable.js";
import { display as train } from "./train.js";
import { display as worm } from "./worm.js";
import type { Display } from "./facets.js";
import type { Stage, StageKind, StageOf } from "./kinds.js";

const table: { readonly [Kind in StageKind]: Display<StageOf<Kind>> } = {
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

/** What is shown of each kind. */
export const displays = table as Readonly<Record<StageKind, Display<Stage>>>;
