import { effect as belt } from "./belt.js";
import { effect as cycloidal } from "./cycloidal.js";
import { effect as measured } from "./measured.js";
import { effect as pair } from "./pair.js";
import { effect as planetary } from "./planetary.js";
import { effect as printed } from "./printed.js";
import { effect as selectable } from "./selectable.js";
import { effect as train } from "./train.js";
import { effect as worm } from "./worm.js";
import type { Effects } from "./facets.js";
import type { Stage, StageKind, StageOf } from "./kinds.js";

const table: { readonly [Kind in StageKind]: Effects<StageOf<Kind>> } = {
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

/** What each kind does to the reduction. */
export const effects = table as Readonly<Record<StageKind, Effects<Stage>>>;
