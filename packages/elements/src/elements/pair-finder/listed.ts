import { reasonText } from "@meshwright/calc/fit";
import type { Bounded, Rational } from "@meshwright/calc/exact";
import type { Evaluation } from "@meshwright/calc/evaluate";
import type { Writer } from "@meshwright/calc/report";
import { fill } from "../../shared/words/index.js";
import type { ToolWords } from "../../shared/tools/index.js";
import type { Asked, Found } from "./question.js";

/** One pair as it is listed and drawn. */
export interface Listed {
  readonly one: Found;
  /** Whether it reaches every range, meshes and fits. */
  readonly hit: boolean;
  /** Whether both gears are of one pitch, so that it could be tried at all. */
  readonly meshes: boolean;
  /** Between the axes without play, in millimetres; none where the two do not mesh. */
  readonly centre: Bounded | undefined;
  /** What speaks against it, or is worth knowing, in sentences. */
  readonly reasons: readonly string[];
}

/** A pair that was found, or nearly, with its centre distance and its reasons as sentences. */
export function listedFrom(
  one: Found,
  hit: boolean,
  { question }: Asked,
  evaluation: Evaluation,
  shop: ToolWords,
  writer: Writer,
  lengthText: (length: Bounded) => string,
): Listed {
  const meshes = !one.reasons.some(({ code }) => code.startsWith("pitch"));
  const outside = one.outside.flatMap((off, n) => {
    const { id } = question.outputs[n]!;
    const open = one.reaches[n] === "cannot tell";
    const verdict = writer.words[open ? "uncertain" : off.sign < 0 ? "below" : "above"];
    const text = fill(shop.outsideRange, evaluation.output(id)!.label, writer.number(one.totals[n]!), verdict);
    return off.sign ? text : [];
  });
  const shareText = (share: Rational) => writer.number(share, { percent: true, digits: 2 });
  const told = one.reasons.filter(
    ({ weight, code }) => hit === (weight === "information") || code === "sleeve" || code === "plate",
  );
  const reasons = [...outside, ...told.map((reason) => reasonText(reason, lengthText, shop.reasons, shareText))];
  return { one, hit, meshes, centre: meshes ? one.centre : undefined, reasons: [...new Set(reasons)] };
}

/** Millimetres for drawing. */
export const drawn = ({ centre }: Listed): number | undefined =>
  centre === undefined ? undefined : centre.low.toNumber();
