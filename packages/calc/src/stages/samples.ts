import { sample as belt } from "./belt.js";
import { sample as cycloidal } from "./cycloidal.js";
import { sample as measured } from "./measured.js";
import { sample as pair } from "./pair.js";
import { sample as planetary } from "./planetary.js";
import { sample as printed } from "./printed.js";
import { sample as selectable } from "./selectable.js";
import { sample as train } from "./train.js";
import { sample as worm } from "./worm.js";
import type { Sample } from "./facets.js";
import type { StageKind } from "./kinds.js";

/** What an editor begins a new stage of each kind with. */
export const samples: Readonly<Record<StageKind, Sample>> = {
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
