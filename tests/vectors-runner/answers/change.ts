import { changeOf } from "@meshwright/calc/evaluate";
import { bounded, rational } from "@meshwright/calc/exact";
import type { VectorFile } from "../cases.js";
import { exact } from "../ends.js";
import { fraction } from "../fields.js";

export const file: VectorFile<{ from: string; to: string }> = {
  given: ["from", "to"],
  form: { expect: { reduction: fraction, wheelSpeed: fraction, wheelTorque: fraction, midpoint: fraction } },
  answer({ from, to }) {
    const { reduction, wheelSpeed, wheelTorque, midpoint } = changeOf(bounded(rational(to).over(from)));
    return {
      expect: {
        reduction: exact(reduction),
        wheelSpeed: exact(wheelSpeed),
        wheelTorque: exact(wheelTorque),
        midpoint: exact(midpoint),
      },
    };
  },
};
