import { changeOf } from "../evaluate/index.js";
import { fill } from "../languages/index.js";
import type { Build } from "../drivetrain/index.js";
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
 * What a version comes to against the published one, the effect before the cause: each total that is another with what it was, and
 * where it stands in the range if that is another word; then what stays. Where no total moves: what the wheels roll, or front
 * against rear; and where nothing of that moves, that no total does.
 *
 * @param now the version as it stands
 * @param published the author's
 * @returns sentences without their full stops
 */
export function sayEffects(now: Speaker, published: Speaker): readonly string[] {
  const { words, evaluation } = now;
  const both = evaluation.outputs.filter(({ id }) => published.evaluation.output(id));
  const totals = both.map(({ id, label }) => {
    const query = { figure: "reduction", of: id };
    const moved = movedBetween(now, published, query);
    const standing = standingNow(now, published, id);
    const total = moved ? fill(words.moved, label, ...moved) : `${label} ${now.figure(query)}`;
    return standing ? fill(words.now[standing[0]], total, standing[1]) : moved && total;
  });
  if (totals.some(Boolean)) {
    const rest = both.filter((_, n) => !totals[n]).map(({ label }) => fill(words.asBefore, label));
    return [...totals.filter((one) => one !== undefined), ...rest];
  }
  const rolled = both.flatMap(({ id, label, output }) => {
    const moved = output.wheel && movedBetween(now, published, { figure: "travel", of: id });
    return moved ? [fill(words.rolls, label, ...moved)] : [];
  });
  if (rolled.length) return rolled;
  const pair = both.length > 1 ? evaluation.compare() : undefined;
  const lead = pair && movedBetween(now, published, { figure: "lead" });
  return [lead ? fill(words.moved, pair.of.label, ...lead) : words.noEffect];
}

/**
 * How much slower or faster the wheels of each output turn than in the published version, for the same turns of the motor; nothing
 * of an output that does not change.
 */
export function sayWheels(now: Speaker, published: Speaker): readonly string[] {
  const { words, evaluation, writer } = now;
  return evaluation.outputs.flatMap(({ id, label, reduction }) => {
    const before = published.evaluation.output(id)?.reduction;
    if (!reduction || !before) return [];
    const change = changeOf(reduction.over(before).bounds).wheelSpeed;
    const { sign } = change.low;
    if (!sign || sign !== change.high.sign) return [];
    const share = writer.number(sign < 0 ? change.times(-1) : change, { percent: true, digits: 1 });
    return [fill(sign < 0 ? words.slower : words.faster, label, share)];
  });
}
