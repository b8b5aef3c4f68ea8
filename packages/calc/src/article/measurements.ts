import { countsBehind, measurementsOf, type Agreement, type Checked } from "../counted/index.js";
import { type Build, type ChangeSet, type Measurement } from "../drivetrain/index.js";
import { fill } from "../languages/index.js";
import type { Block, BlockRow } from "./block.js";
import { listed } from "./block.js";
import { outputFault } from "./faults.js";
import { dateText } from "./part-text.js";
import { placeName } from "./places.js";
import { said, type Attributes } from "./said.js";
import { type Reporter, type Unsaid } from "./speaker.js";

/** One measurement, and what it says of the build. */
export interface MeasuredRow extends BlockRow {
  readonly verdict: Agreement["verdict"] | undefined;
  /** When, with which counts, and the author's note. */
  readonly about: string;
}

/** What `mw-measurements` says. */
export interface SaidMeasurements extends Block {
  readonly heads: readonly string[];
  readonly rows: readonly MeasuredRow[];
}

/** The turns as they were counted. */
function turnsText({ reports, words, writer }: Reporter, measurement: Measurement): string {
  const { motorTurns, wheelTurns, oneWheelHeld } = measurement;
  const wheel =
    typeof wheelTurns === "object"
      ? writer.range(writer.given(wheelTurns.from), writer.given(wheelTurns.to))
      : writer.given(wheelTurns);
  const text = fill(reports.measuring.turns, writer.given(motorTurns), wheel);
  return oneWheelHeld ? fill(words.aside, text, reports.measuring.held) : text;
}

/** Agrees, disagrees and by how much, or that nobody can tell. */
function verdictText({ reports, words, writer }: Reporter, agreement: Agreement | undefined): string {
  if (!agreement) return words.unknown;
  if (agreement.verdict === "agrees") return reports.measuring.agrees;
  const { by } = agreement;
  if (!by) return words.uncertain;
  return fill(
    by.sign > 0 ? reports.measuring.above : reports.measuring.below,
    writer.number(by.abs(), { percent: true }),
  );
}

/** The counts that a measurement was made with, as far as the build that is shown has others. */
function othersThen(then: Build | undefined, now: Build, of: string): ChangeSet {
  const [was, is] = [then === now ? {} : then ? countsBehind(then, of) : {}, countsBehind(now, of)];
  return Object.fromEntries(Object.entries(was).filter(([address, value]) => is[address] !== value));
}

/** When it was made, with which counts where they may have changed since, and what the author noted. */
function aboutText(
  { evaluation, reports, words, writer, locale }: Reporter,
  { measurement: one, build: then }: Checked,
) {
  const { build } = evaluation;
  const counts = Object.entries(one.with ?? othersThen(then, build, one.what)).map(([address, value]) =>
    fill(
      words.told,
      placeName({ evaluation: { build: then ?? build }, words }, address),
      typeof value === "number" || typeof value === "string" ? writer.given(value) : JSON.stringify(value),
    ),
  );
  const texts = [
    one.date && dateText(one.date, locale),
    counts.length ? fill(reports.measuring.with, listed(counts, words)) : undefined,
    one.note,
  ];
  return texts.filter(Boolean).join(". ");
}

/**
 * What `mw-measurements` says: each measurement against what the build says, with the counts that it was made with: agrees,
 * disagrees and by how much at least, or cannot tell.
 *
 * @param published the author's build, where the speaker's is a reader's version of it
 */
export function sayMeasurements(
  speaker: Reporter,
  attributes: Attributes,
  published?: Build,
): SaidMeasurements | Unsaid {
  const { evaluation, reports, words, writer } = speaker;
  const of = said(attributes, "of");
  const findings = outputFault(evaluation.build, of);
  if (findings.length) return { findings };
  const heads = [
    reports.measuring.output,
    reports.measuring.counted,
    reports.measured,
    reports.measuring.build,
    reports.measuring.verdict,
  ];
  const rows = measurementsOf(evaluation, published)
    .filter(({ measurement }) => of === undefined || measurement.what === of)
    .map((checked): MeasuredRow => {
      const { measurement, agreement, reduction } = checked;
      const verdict = verdictText(speaker, agreement);
      return {
        head: placeName(speaker, measurement.what),
        verdict: agreement?.verdict,
        about: aboutText(speaker, checked),
        texts: [
          turnsText(speaker, measurement),
          agreement ? writer.number(agreement.measured) : words.unknown,
          reduction ? writer.number(reduction) : words.unknown,
          verdict,
        ],
      };
    });
  return {
    heads,
    rows,
    tables: rows.length ? [{ caption: reports.measuring.caption, heads, rows }] : [],
    notes: [...(rows.length ? rows.map(({ about }) => about).filter(Boolean) : [reports.measuring.nothing])],
  };
}
