import { findPairs } from "@meshwright/calc/search";
import type { VectorFile } from "../cases.js";
import { listOf, same } from "../fields.js";

interface FindCase {
  readonly drivers: readonly number[];
  readonly drivens: readonly number[];
  readonly module?: string;
  readonly diametralPitch?: string;
  readonly restOfTrain: string;
  readonly target: { readonly from: string; readonly to: string };
  readonly slot: { readonly from_mm: string; readonly to_mm: string };
}

export const file: VectorFile<FindCase> = {
  given: ["drivers", "drivens", "module", "diametralPitch", "restOfTrain", "target", "slot"],
  optional: ["module", "diametralPitch"],
  form: { expect_nearestToMiddleFirst: listOf(listOf(same)) },
  answer({ drivers, drivens, module, diametralPitch, restOfTrain: rest, target, slot }) {
    if ((module === undefined) === (diametralPitch === undefined)) throw new Error("Not one pitch.");
    const batches = findPairs({
      drivers,
      drivens,
      pitch: module === undefined ? { diametralPitch } : { module },
      outputs: [{ id: "total", rest, from: target.from, to: target.to }],
      mount: { from: `${slot.from_mm} mm`, to: `${slot.to_mm} mm` },
    });
    const pairs = [...batches].flatMap(({ found }) => found.map(({ counts }) => [...counts]));
    return { expect_nearestToMiddleFirst: pairs };
  },
};
