import { isUnsaid, sayTeeth, sayValue, speakerOf, type Reporter } from "@meshwright/calc/article";
import { attributeFindings } from "@meshwright/calc/document";
import { stagesOf, type Build } from "@meshwright/calc/drivetrain";
import { evaluate, type Evaluation } from "@meshwright/calc/evaluate";
import { figureWords, reportWords } from "@meshwright/calc/languages";
import { figures, versionOf } from "@meshwright/calc/report";
import { displays } from "@meshwright/calc/stages";
import type { Ask, FigureAttrs } from "./schema.js";

const known = new WeakMap<Build, Evaluation>();
function evaluationOf(build: Build): Evaluation {
  let evaluation = known.get(build);
  if (!evaluation) known.set(build, (evaluation = evaluate(build)));
  return evaluation;
}

/** Whoever says something of a version of a drivetrain, in English. */
export function reporterOf(build: Build, at?: string): Reporter | undefined {
  const version = at ? versionOf(build, at) : build;
  return (
    version &&
    speakerOf({
      evaluation: evaluationOf(version),
      locale: "en",
      words: figureWords,
      reports: reportWords,
      figures,
      version: (id) => {
        const other = versionOf(build, id);
        return other && evaluationOf(other);
      },
    })
  );
}

/** Whether an element bears a word that was meant to be one of its own. */
export const isMisspelt = (tag: string, ask: Ask): boolean =>
  attributeFindings(tag, Object.keys(ask)).some(({ severity }) => severity === "error");

/** What a figure of a post reads as now; nothing where the drivetrain does not say enough for it. */
export function figureText(build: Build, { tag, ask }: FigureAttrs): string | undefined {
  // A word that nobody knows asks for nothing: what is shown without it is another figure.
  if (isMisspelt(tag, ask)) return undefined;
  try {
    const speaker = reporterOf(build, ask.at);
    const said = speaker && (tag === "mw-teeth" ? sayTeeth(speaker, ask) : sayValue(speaker, ask));
    return isUnsaid(said) ? undefined : said;
  } catch {
    return undefined;
  }
}

/** A figure that a drivetrain has, and what it is in words. */
export interface Candidate extends FigureAttrs {
  readonly text: string;
  readonly say: string;
}

/** Every figure that a sentence is likely to be about, as it reads now. */
export function candidatesOf(build: Build): readonly Candidate[] {
  const found: Candidate[] = [];
  const add = (tag: FigureAttrs["tag"], ask: Readonly<Record<string, string>>, say: string): void => {
    const text = figureText(build, { tag, ask });
    if (text !== undefined && /\d/.test(text)) found.push({ tag, ask, text, say });
  };
  const { outputs, target } = build;
  for (const { id, label = id, wheel } of outputs) {
    add("mw-value", { of: id }, `motor turns for one wheel turn, ${label.toLowerCase()}`);
    add("mw-value", { of: id, figure: "travel" }, `ground rolled for one motor turn, ${label.toLowerCase()}`);
    add("mw-value", { of: id, figure: "speed" }, `ideal speed at full charge, ${label.toLowerCase()}`);
    if (wheel?.diameter)
      add("mw-value", { figure: "count", of: `${id}.wheel.diameter` }, `tyre, ${label.toLowerCase()}`);
  }
  if (outputs.length > 1) {
    add("mw-value", { figure: "gap" }, "front against rear, as a percentage");
    add("mw-value", { figure: "gap", scope: "gears" }, "front against rear, gears alone");
  }
  if (target) add("mw-value", { figure: "range" }, "the range that you want");
  for (const { stage } of stagesOf(build)) {
    const label = stage.label ?? stage.id;
    for (const piece of displays[stage.kind](stage)) {
      if (!("field" in piece) || piece.field === undefined) continue;
      const of = `${stage.id}.${piece.field}`;
      const own = (stage as unknown as Record<string, unknown>)[`${piece.field}Label`];
      const say =
        typeof own === "string"
          ? own
          : `${label}, ${piece.field.replace(/\.(\d+)/, (_, n: string) => ` ${Number(n) + 1}`)}`;
      if (typeof piece.value === "number" && !("set" in stage && stage.set)) add("mw-teeth", { of }, `teeth: ${say}`);
      else add("mw-value", { figure: "count", of }, say);
    }
    add("mw-value", { of: stage.id }, `what ${label} does alone`);
    add("mw-value", { figure: "centre", of: stage.id }, `centre distance, ${label}`);
  }
  return found;
}

const told = new WeakMap<Build, ReadonlyMap<string, string>>();
const keyOf = ({ tag, ask }: FigureAttrs): string =>
  JSON.stringify([tag, Object.entries(ask).sort(([one], [other]) => (one < other ? -1 : 1))]);

/** What a figure of a post is, in words; nothing where it is none that a sentence is likely to be about. */
export function figureSay(build: Build, attrs: FigureAttrs): string | undefined {
  let says = told.get(build);
  if (!says) told.set(build, (says = new Map(candidatesOf(build).map((one) => [keyOf(one), one.say]))));
  return says.get(keyOf(attrs));
}
