import type { Unknowns } from "./facets.js";
import type { Stage, StageKind, StageOf } from "./kinds.js";
import { unknown as measured } from "./measured.js";
import { unknown as printed } from "./printed.js";

const table: { readonly [Kind in StageKind]?: Unknowns<StageOf<Kind>> } = { measured, published: printed };

/** What is not known exactly, of the kinds that are known by what is printed on them or by turning them. */
export const unknowns = table as Readonly<Partial<Record<StageKind, Unknowns<Stage>>>>;
