import { notation as belt } from "./belt.js";
import { notation as cycloidal } from "./cycloidal.js";
import { notation as measured } from "./measured.js";
import { notation as pair } from "./pair.js";
import { notation as planetary } from "./planetary.js";
import { notation as printed } from "./printed.js";
import { notation as train } from "./train.js";
import { notation as worm } from "./worm.js";
import type { Notation } from "./facets.js";
import type { Stage, StageKind, StageOf } from "./kinds.js";

const table: { readonly [Kind in StageKind]: Notation<StageOf<Kind>> | undefined } = {
  pair,
  train,
  belt,
  worm,
  planetary,
  cycloidal,
  measured,
  published: printed,
  // A lever has no place in a line of counts.
  selectable: undefined,
};

/** How each kind is written in attributes. */
export const notations = table as Readonly<Record<StageKind, Notation<Stage> | undefined>>;
