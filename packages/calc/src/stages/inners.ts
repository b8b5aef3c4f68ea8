import type { Inner } from "./facets.js";
import type { Stage, StageKind, StageOf } from "./kinds.js";
import { inner as selectable } from "./selectable.js";

/** It is asked for every stage of every build: what is not in it is not looked for behind it. */
const table: { readonly [Kind in StageKind]?: Inner<StageOf<Kind>> } = { __proto__: null, selectable } as object;

/** What stands in for a stage of a kind that has stages inside. */
export const inners = table as Readonly<Partial<Record<StageKind, Inner<Stage>>>>;
