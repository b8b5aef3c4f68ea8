import { stagesOf, type Build } from "../drivetrain/index.js";
import { fill } from "../languages/index.js";
import { electricalFindings } from "../motion/index.js";
import { checks, findingOf, type Finding } from "../stages/index.js";
import { placeName } from "./places.js";
import type { Reporter } from "./speaker.js";

/** What whoever holds a nominal box in their hands has to know. */
const nominal = (build: Build): Finding[] =>
  stagesOf(build).flatMap(({ stage, pointer }) => {
    const found: Finding[] = [];
    checks[stage.kind](stage, (severity, code, field, values) => {
      if (code === "ratio-nominal")
        found.push(findingOf(severity, "meaning", code, `${pointer}/${field}`, { ...values, stage: stage.id }));
    });
    return found;
  });

/** What concerns the hands that build it: nominal boxes, and a full pack against what bears less. */
const handFindings = (build: Build): readonly Finding[] => [...nominal(build), ...electricalFindings(build)];

/** The same, in words. */
export function warningsOf(speaker: Reporter): readonly string[] {
  const { evaluation, reports, words, writer } = speaker;
  return handFindings(evaluation.build).map(({ code, values, message }) => {
    const {
      stage,
      value,
      cells,
      full,
      nominal: usual,
      limit,
      kv,
    } = values as Readonly<Record<string, string | number>>;
    const said = (one: string | number | undefined): string => (one === undefined ? "?" : writer.given(String(one)));
    switch (code) {
      case "ratio-nominal":
        return fill(words.told, placeName(speaker, String(stage)), fill(reports.hands.nominal, said(value)));
      case "full-over-controller":
        return fill(reports.hands.controller, said(cells), said(full), said(usual), said(limit));
      case "full-over-motor":
        return fill(reports.hands.motor, said(cells), said(full), said(usual), said(limit));
      case "over-max-rpm":
        return fill(reports.hands.rpm, said(kv), said(full), said(limit));
      default:
        return message;
    }
  });
}
