import { check as belt } from "./belt.js";
import { check as cycloidal } from "./cycloidal.js";
import { check as measured } from "./measured.js";
import { check as pair } from "./pair.js";
import { check as planetary } from "./planetary.js";
import { check as printed } from "./printed.js";
import { check as selectable } from "./selectable.js";
import { check as train } from "./train.js";
import { check as worm } from "./worm.js";
import type { Check } from "./facets.js";
import type { Stage, StageKind, StageOf } from "./kinds.js";

const table: { readonly [Kind in StageKind]: Check<StageOf<Kind>> } = {
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

/** What of each kind cannot be seen from its shape. */
export const checks = table as Readonly<Record<StageKind, Check<Stage>>>;
