import { setOf, spotOf, valueAt, type GearSet } from "../drivetrain/index.js";
import { checkQuery, driveText, type Writer } from "../report/index.js";
import { countFault } from "./faults.js";
import { queryOf } from "./query.js";
import { said, type Attributes } from "./said.js";
import type { Speaker, Unsaid } from "./speaker.js";

/** What `mw-value` says. */
export function sayValue(speaker: Speaker, attributes: Attributes): string | Unsaid {
  const query = queryOf(attributes);
  const findings = checkQuery(query, speaker.evaluation.build, speaker.others);
  return findings.length ? { findings } : speaker.figure(query);
}

/** All counts of a set, as they stand in a sentence. */
export const setText = (set: GearSet, writer: Writer): string =>
  driveText(
    Object.values(set).map((count) => writer.given(count)),
    "sentence",
    writer,
  );

/** What `mw-teeth` says: a count, or the two counts of a set that is one value. */
export function sayTeeth({ evaluation: { build }, writer }: Speaker, attributes: Attributes): string | Unsaid {
  const of = said(attributes, "of") ?? "";
  const stage = spotOf(build, of)?.stage;
  const set = stage?.id === of ? setOf(stage) : undefined;
  if (set) return setText(set, writer);
  const fault = countFault(build, said(attributes, "of"));
  return fault ? { findings: [fault] } : writer.given(valueAt(build, of) as number);
}
