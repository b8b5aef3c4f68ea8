import type { Inner } from "./facets.js";
import type { Stage, StageKind, StageOf } from "./kinds.js";
import { inner as selectable } from "./selectable.js";

const table: { readonly [Kind in StageKind]?: Inner<StageOf<Kind>> } = { selectable };

/** What stands in for a stage of a kind that has stages inside. */
export const inners = table as Readonly<Partial<Record<StageKind, Inner<Stage>>>>;
