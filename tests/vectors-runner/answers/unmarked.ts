import { unmarkedGear } from "@meshwright/calc/counted";
import type { Toothed } from "@meshwright/calc/gears";
import type { VectorFile } from "../cases.js";
import { listOf, mapOf, same } from "../fields.js";

interface Gear {
  teeth: number;
  series: Toothed[];
  outsideDiameter_mm?: { from: string; to: string };
  addendum?: number;
  span?: { teeth: number; from_mm: string; to_mm: string };
  pressureAngles?: string[];
}

const between = (from: string, to: string) => ({ from: `${from} mm`, to: `${to} mm` });

export const file: VectorFile<Gear> = {
  given: ["teeth", "series", "outsideDiameter_mm", "addendum", "span", "pressureAngles"],
  optional: ["outsideDiameter_mm", "addendum", "span", "pressureAngles"],
  form: { expect: listOf(mapOf(same)) },
  answer({ teeth, series, outsideDiameter_mm: outside, addendum, span, pressureAngles }) {
    const question = {
      teeth,
      ...(outside && { outside: between(outside.from, outside.to) }),
      ...(addendum !== undefined && { addendum }),
      ...(span && { span: { teeth: span.teeth, over: between(span.from_mm, span.to_mm) } }),
      ...(pressureAngles && { pressureAngles }),
    };
    return { expect: unmarkedGear(question, series).canBe };
  },
};
