import { changeOf, type OutputEvaluation } from "../evaluate/index.js";
import { fill } from "../languages/index.js";
import type { Build } from "../drivetrain/index.js";
import { speedsOf } from "../motion/index.js";
import type { QueryText } from "../report/index.js";
import type { Speaker } from "./speaker.js";

type Standing = keyof Speaker["words"]["now"];

/** What one figure is in both versions, where it is another. */
function movedBetween(
  now: Speaker,
  published: Speaker,
  query: QueryText,
): readonly [now: string, was: string] | undefined {
  const [yours, was] = [now.figure(query), published.figure(query)];
  return yours === was ? undefined : [yours, was];
}

const rangeIn = ({ target }: Build): string => JSON.stringify([target?.from, target?.to]);

/** Where an output stands in the range now, where that is another word than the published one's. */
function standingNow(now: Speaker, published: Speaker, of: string): readonly [Standing, range: string] | undefined {
  const { words, evaluation } = now;
  const { target } = evaluation.build;
  if (!target || (target.output ?? of) !== of || !published.evaluation.build.target) return undefined;
  const [standing] = movedBetween(now, published, { figure: "standing", of }) ?? [];
  const key = (Object.keys(words.now) as Standing[]).find((one) => words[one] === standing);
  const own = rangeIn(evaluation.build) === rangeIn(published.evaluation.build) ? words.authorsRange : words.ownRange;
  return key && [key, fill(own, now.figure({ figure: "range" }))];
}

/**
 * The ideal speed of an output now and before, where its motor turns otherwise at full charge: another motor, or another pack. What
 * gears and tyres do to it is told by what they do.
 */
function speedMoved(now: Speaker, published: Speaker, id: string): string | undefined {
  const [turns, before] = [now, published].map(({ evaluation }) => {
    const output = evaluation.output(id);
    return output && speedsOf(evaluation.build, output).full?.motorRpm.low;
  });
  if (!turns || !before || turns.equals(before)) return undefined;
  const moved = movedBetween(now, published, { figure: "speed", of: id });
  return moved && fill(now.words.idealSpeed, now.evaluation.output(id)!.label, ...moved);
}

/** The total of an output, where it is another or stands elsewhere in the range. */
function totalMoved(now: Speaker, published: Speaker, { id, label }: OutputEvaluation): string | undefined {
  const { words } = now;
  const query = { figure: "reduction", of: id };
  const moved = movedBetween(now, published, query);
  const standing = standingNow(now, published, id);
  const total = moved ? fill(words.moved, label, ...moved) : `${label} ${now.figure(query)}`;
  return standing ? fill(words.now[standing[0]], total, standing[1]) : moved && total;
}

/** What the wheels of an output roll for one turn of the motor, where that is other ground. */
function travelMoved(now: Speaker, published: Speaker, { id, label, output }: OutputEvaluation): string | undefined {
  const moved = output.wheel && movedBetween(now, published, { figure: "travel", of: id });
  return moved && fill(now.words.rolls, label, ...moved);
}

/**
 * What a version comes to against the published one, the effect before the cause: of each output its total where that is another,
 * with what it was, and where it stands in the range if that is another word; else what its wheels roll; and its ideal speed where
 * the motor itself turns faster or slower. Then what stays. Where nothing of that moves: front against rear; and where that does
 * not, that no total does.
 *
 * @param now the version as it stands
 * @param published the author's
 * @returns sentences without their full stops
 */
export function sayEffects(now: Speaker, published: Speaker): readonly string[] {
  const { words, evaluation } = now;
  const both = evaluation.outputs.filter(({ id }) => published.evaluation.output(id));
  const told = both.map((output) => {
    const gears = totalMoved(now, published, output) ?? travelMoved(now, published, output);
    return [gears, speedMoved(now, published, output.id)].filter((one) => one !== undefined);
  });
  if (told.some((one) => one.length)) {
    const rest = both.filter((_, n) => !told[n]!.length).map(({ label }) => fill(words.asBefore, label));
    return [...told.flat(), ...rest];
  }
  const pair = both.length > 1 ? evaluation.compare() : undefined;
  const lead = pair && movedBetween(now, published, { figure: "lead" });
  return [lead ? fill(words.moved, pair.of.label, ...lead) : words.noEffect];
}

/**
 * How much slower or faster the wheels of each output turn than in the published version, for the same turns of the motor; or,
 * where the motor turns otherwise, their ideal speed. Nothing of an output that does not change.
 */
export function sayWheels(now: Speaker, published: Speaker): readonly string[] {
  const { words, evaluation, writer } = now;
  return evaluation.outputs.flatMap(({ id, label, reduction }) => {
    const before = published.evaluation.output(id)?.reduction;
    if (!reduction || !before) return [];
    const ideal = speedMoved(now, published, id);
    if (ideal) return [ideal];
    const change = changeOf(reduction.over(before).bounds).wheelSpeed;
    const { sign } = change.low;
    if (!sign || sign !== change.high.sign) return [];
    const share = writer.number(sign < 0 ? change.times(-1) : change, { percent: true, digits: 1 });
    return [fill(sign < 0 ? words.slower : words.faster, label, share)];
  });
}
