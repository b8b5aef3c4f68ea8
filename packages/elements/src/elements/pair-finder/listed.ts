import { sayTotals, type Reporter, type SaidTotal } from "@meshwright/calc/article";
import type { Bounded, Rational } from "@meshwright/calc/exact";
import { fill, reasonText } from "@meshwright/calc/languages";
import type { FoundPair } from "@meshwright/calc/search";
import type { Asked } from "./question.js";

/** One pair as it is listed and drawn. */
export interface Listed {
  readonly one: FoundPair;
  /** Whether it reaches every range, meshes and fits. */
  readonly hit: boolean;
  /** Whether both gears are of one pitch, so that it could be tried at all. */
  readonly meshes: boolean;
  /** Between the axes without play, in millimetres; none where the two do not mesh. */
  readonly centre: Bounded | undefined;
  /** What each output comes to: one that is known only as an interval is one all the same. */
  readonly totals: readonly SaidTotal[];
  /** What speaks against it, or is worth knowing, in sentences. */
  readonly reasons: readonly string[];
}

/** A pair that was found, or nearly, with its centre distance and its reasons as sentences. */
export function listedFrom(
  one: FoundPair,
  hit: boolean,
  { question }: Asked,
  speaker: Reporter,
  lengthText: (length: Bounded) => string,
): Listed {
  const meshes = !one.reasons.some(({ code }) => code.startsWith("pitch"));
  const { writer, reports } = speaker;
  const totals = sayTotals(
    speaker,
    question.outputs.map(({ id }, n) => ({ id, total: one.totals[n]! })),
  );
  const shareText = (share: Rational) => writer.number(share, { percent: true });
  const told = one.reasons.filter(
    ({ weight, code }) => hit === (weight === "information") || code === "sleeve" || code === "plate",
  );
  // How the mesh is set, as drawing and card have it.
  const opened = hit && one.opening?.low.sign && one.axes;
  const reasons = [
    ...(opened ? [fill(reports.setAt, lengthText(opened), lengthText(one.opening!))] : []),
    ...totals.flatMap(({ outside }) => outside ?? []),
    ...told.map((reason) => reasonText(reason, lengthText, reports.reasons, shareText)),
  ];
  return { one, hit, meshes, centre: meshes ? one.centre : undefined, totals, reasons: [...new Set(reasons)] };
}

/** Between the axes as they are set, in millimetres, for drawing. */
export const drawn = ({ one, centre }: Listed): number | undefined =>
  centre === undefined ? undefined : (one.axes ?? centre).low.toNumber();
