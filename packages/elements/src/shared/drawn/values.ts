import type { BuildStore } from "../store/index.js";

/** How much a reader has changed of what is built; in which unit lengths are shown is nothing of that. */
export const valuesChanged = ({ changed, layer }: Pick<BuildStore, "changed" | "layer">): number =>
  changed - Number("lengths" in layer.sets);
