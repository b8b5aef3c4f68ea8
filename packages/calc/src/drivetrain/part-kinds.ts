import type { PartKind } from "../stages/index.js";
import { shapes } from "./shapes.js";

/** The kinds of parts, in the order in which they are offered. */
export const partKinds = shapes.part!.is!.replace("!", "").split("|") as readonly PartKind[];
