import { unmarkedGear } from "@meshwright/calc/counted";
import type { VectorFile } from "../cases.js";
import { listOf, mapOf, same } from "../fields.js";

interface Interval {
  readonly from: string;
  readonly to: string;
}

interface UnmarkedCase {
  readonly teeth: number;
  readonly series: Parameters<typeof unmarkedGear>[1];
  readonly outsideDiameter_mm?: Interval;
  readonly addendum?: number;
  readonly span?: { readonly teeth: number; readonly from_mm: string; readonly to_mm: string };
  readonly pressureAngles?: readonly string[];
}

const between = (from: string, to: string) => ({ from: `${from} mm`, to: `${to} mm` });

export const file: VectorFile<UnmarkedCase> = {
  given: ["teeth", "series", "outsideDiameter_mm", "addendum", "span", "pressureAngles"],
  optional: ["outsideDiameter_mm", "addendum", "span", "pressureAngles"],
  form: { expect: listOf(mapOf(same)) },
  answer({ teeth, series, outsideDiameter_mm: outside, addendum, span, pressureAngles }) {
    const question = {
      teeth,
      ...(outside && { outside: between(outside.from, outside.to), addendum }),
      ...(span && { span: { teeth: span.teeth, over: between(span.from_mm, span.to_mm) }, pressureAngles }),
    };
    return { expect: unmarkedGear(question as Parameters<typeof unmarkedGear>[0], series).canBe };
  },
};
