import { rational, type Rounding } from "@meshwright/calc/exact";
import type { VectorFile } from "../cases.js";
import { same } from "../fields.js";

export const file: VectorFile<{ value: string; rounding: Rounding }> = {
  given: ["value", "rounding"],
  form: { expect: same },
  answer: ({ value, rounding }) => ({ expect: rational(value).toDecimal(rounding) }),
};
