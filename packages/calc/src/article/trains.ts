import { stagesOf, type Build } from "../drivetrain/index.js";
import type { Evaluation } from "../evaluate/index.js";
import { rational, type Rational } from "../exact/index.js";
import { fill } from "../languages/index.js";
import { needsOfStage } from "../parts/index.js";
import type { FoundTrain, TrainQuestion } from "../search/index.js";
import { errorOf, type Finding } from "../stages/index.js";
import { idFault, outputIds } from "./faults.js";
import { pairText, sayTotals } from "./pairs.js";
import { moneyText, partName } from "./part-text.js";
import { placeName } from "./places.js";
import { said, type Attributes } from "./said.js";
import { type Reporter } from "./speaker.js";

/** The stages that may be chosen: pairs and sets that an output drives. */
export function stagesToChoose({ outputs }: Evaluation): string[] {
  const stages = new Set(outputs.flatMap(({ steps }) => steps.map(({ stage }) => stage)));
  return [...stages].filter((stage) => needsOfStage(stage).together).map(({ id }) => id);
}

const words = (text: string | undefined): string[] => (text ?? "").split(/[\s,]+/).filter(Boolean);

/** A lead in percent, as a share. */
export function leadFrom(text: string): Rational | undefined {
  const plain = text.normalize("NFKC").replace(/[−–]/g, "-").replace(",", ".").trim();
  const [, number] = /^([+-]?\d{1,3}(?:\.\d{1,9})?)\s*%?$/.exec(plain) ?? [];
  const value = number === undefined ? undefined : rational(number.replace("+", "")).over(100);
  return value && value.compare(-1) > 0 ? value : undefined;
}

/** Two leads with `to` between, or nothing where they are no such thing. */
export function leadsFrom(text: string): readonly [Rational, Rational] | undefined {
  const [from, to, ...more] = text.split(/\s+to\s+/).map(leadFrom);
  return from && to && !more.length && from.compare(to) <= 0 ? [from, to] : undefined;
}

/** What is wrong with how trains are asked for. */
export function trainsFaults(build: Build, attributes: Attributes): Finding[] {
  const stages = stagesOf(build).flatMap(({ stage }) => (needsOfStage(stage).together ? stage.id : []));
  const outputs = outputIds(build);
  const lead = said(attributes, "lead");
  return [
    ...words(said(attributes, "of")).flatMap((id) => (stages.includes(id) ? [] : idFault("of", id, stages))),
    ...words(said(attributes, "wheels")).flatMap((id) => (outputs.includes(id) ? [] : idFault("wheels", id, outputs))),
    ...(lead === undefined || leadsFrom(lead)
      ? []
      : [
          errorOf("meaning", "not-understood", "/lead", {
            ...{ name: "lead", found: JSON.stringify(lead), example: "0% to 3%" },
          }),
        ]),
  ];
}

/** One train as `mw-train-finder` lists it. */
export interface SaidTrain {
  /** What is chosen, a stage or wheel each: its place, and its gears or its name. */
  readonly picks: readonly (readonly [place: string, text: string, heard: string])[];
  /** What each output comes to. */
  readonly totals: string;
  readonly lead: string | undefined;
  readonly price: string;
  /** The parts by their names. */
  readonly parts: string;
}

/** What a found train is, and what it comes to. */
export function sayTrain(
  speaker: Reporter,
  stages: readonly string[],
  { outputs }: TrainQuestion,
  train: FoundTrain,
): SaidTrain {
  const { reports, words: figureWords, writer, locale } = speaker;
  const { sums, unpriced, buy } = train.pay;
  const lead = train.ahead;
  const wheels = train.wheels.flatMap((wheel, n): (readonly [string, string, string])[] => {
    const name = wheel && fill(figureWords.told, placeName(speaker, outputs[n]!.id), partName(wheel));
    return name && wheel ? [[outputs[n]!.id, name, name]] : [];
  });
  return {
    picks: [
      ...train.picks.map(({ counts }, n): readonly [string, string, string] => [
        stages[n]!,
        pairText(speaker, stages[n]!, counts, "arrow"),
        pairText(speaker, stages[n]!, counts, "heard"),
      ]),
      ...wheels,
    ],
    totals: sayTotals(
      speaker,
      outputs.map(({ id }, n) => ({ id, total: train.totals[n]! })),
    )
      .map(({ text }) => text)
      .join(" · "),
    lead: lead && writer.worded(lead, figureWords.ahead, figureWords.behind, figureWords.level, { percent: true }),
    price: !buy.length
      ? reports.ownedAlready
      : unpriced || sums.length > 1
        ? reports.noPrice
        : moneyText(sums[0]!.amount, sums[0]!.currency, locale),
    parts: train.picks
      .flatMap(({ parts }) => parts)
      .map(partName)
      .join(" + "),
  };
}
