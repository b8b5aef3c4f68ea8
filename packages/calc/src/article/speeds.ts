import { bounded } from "../exact/index.js";
import type { OutputEvaluation } from "../evaluate/index.js";
import { fill } from "../languages/index.js";
import { electricalFindings, speedsOf, speedSymbols, type Loaded, type WheelSpeed } from "../motion/index.js";
import type { Finding } from "../stages/index.js";
import { listed, type Block, type BlockRow, type BlockTable } from "./block.js";
import { loadedFrom, speedFaults } from "./faults.js";
import { said, type Attributes } from "./said.js";
import { isUnsaid, outputsFor, type Reporter, type Unsaid } from "./speaker.js";

/** What `mw-wheel-speed` says of one output. */
export interface SaidSpeed {
  readonly label: string;
  /** None where speeds are not known; then the note says why. */
  readonly table: BlockTable | undefined;
  readonly note: string;
}

/** What `mw-wheel-speed` says. */
export interface SaidSpeeds extends Block {
  readonly speeds: readonly SaidSpeed[];
  /** What is wrong with the electrics. */
  readonly faults: readonly Finding[];
  readonly cautions: readonly string[];
}

function speedOf(speaker: Reporter, output: OutputEvaluation, unit: string, share: Loaded | undefined): SaidSpeed {
  const { evaluation, reports, words, writer, figure } = speaker;
  const { label, id } = output;
  const { notKnown, nominal, full, loaded } = speedsOf(evaluation.build, output, share);
  if (notKnown) return { label, table: undefined, note: fill(words.told, label, reports.notKnown[notKnown]) };
  const volts = (speed: WheelSpeed): string => writer.number(speed.volts, { unit: "V" });
  const left = share && writer.number(bounded(share.from, share.to), { percent: true, digits: 0 });
  const row = (head: string, speed: WheelSpeed | undefined): BlockRow[] =>
    speed
      ? [
          {
            head,
            texts: [
              writer.number(speed.motorRpm, { digits: 0 }),
              writer.number(speed.wheelRpm, { digits: 0 }),
              writer.number(speed[speedSymbols[unit]!], { digits: 1, unit }),
            ],
          },
        ]
      : [];
  const assumed = [...new Set([nominal, full, loaded].flatMap((speed) => speed?.assumptions ?? []))].map(
    (one) => reports.assumptions[one],
  );
  // Behind an open differential every wheel has one road speed.
  const assumptions = output.isOpen ? [...assumed, words.straightOn] : assumed;
  return {
    label,
    table: {
      caption: label,
      heads: [reports.state, reports.motorRpm, reports.wheelRpm, reports.ground],
      rows: [
        ...row(fill(reports.nominal, nominal ? volts(nominal) : ""), nominal),
        ...row(fill(reports.full, full ? volts(full) : ""), full),
        ...row(fill(reports.loaded, left ?? ""), loaded),
      ],
    },
    note: [
      `${fill(words.told, reports.travel, figure({ figure: "travel", of: id }))}.`,
      reports.ideal,
      `${fill(words.told, reports.assumes, listed(assumptions, words))}.`,
    ].join(" "),
  };
}

/** What `mw-wheel-speed` says: travel, wheel turns and ground speed of each output, with what that takes for granted. */
export function saySpeeds(speaker: Reporter, attributes: Attributes): SaidSpeeds | Unsaid {
  const { evaluation, reports } = speaker;
  const outputs = outputsFor(evaluation, said(attributes, "of"));
  const [unit, loaded] = [said(attributes, "unit"), said(attributes, "loaded")];
  const findings = [...(isUnsaid(outputs) ? outputs.findings : []), ...speedFaults(unit, loaded)];
  if (isUnsaid(outputs) || findings.length) return { findings };
  const share = loaded === undefined ? undefined : loadedFrom(loaded);
  const speeds = outputs.map((output) => speedOf(speaker, output, unit ?? "km/h", share));
  return {
    speeds,
    tables: speeds.flatMap(({ table }) => table ?? []),
    notes: speeds.map(({ note }) => note),
    faults: electricalFindings(evaluation.build),
    cautions: reports.cautions,
  };
}
