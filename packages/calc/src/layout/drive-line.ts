import { innerOf, splitsOf, type Motor, type SplitPlace } from "../drivetrain/index.js";
import { type Evaluation, type OutputEvaluation, type Step } from "../evaluate/index.js";
import { directions, inners, type Position, type Stage, type Turn } from "../stages/index.js";

/** Where something can be let into the line: a change says `insert`, `into` and `at`. */
export interface LinePlace {
  /** The output, branch or position whose list it is; none: what all share. */
  readonly into?: string;
  readonly at: number;
}

/** A stage on the line, with what its shaft has come to behind it. */
export interface LineStage {
  readonly stage: Stage;
  readonly place: LinePlace;
  /** Its step of the evaluation; none for a box with a lever, whose stages follow it, and for what stands behind a released one. */
  readonly step: Step | undefined;
  /** The ways that a lever can stand, where it has one; the one that stands is `stands`. */
  readonly lever: { readonly positions: readonly Position[]; readonly stands: Position } | undefined;
  /** The box with a lever that it stands in. */
  readonly inside: Stage | undefined;
  /** Which way the shaft behind it turns against the motor, by what its kind would do; 0 where even that is not known. */
  readonly turn: Turn;
  /** Whether everything up to here has said what decides that. */
  readonly isEstablished: boolean;
  /** Whether the motor turns it: nothing behind a released box is. */
  readonly isDriven: boolean;
}

/** A shaft of the line: from a motor, or from where another one splits, to where it splits itself or to a wheel. */
export interface Strand {
  /** `""` for what all share; else the id of the branch or output. */
  readonly id: string;
  readonly label: string | undefined;
  /** Where it begins at a motor; a motor of which nothing is known is an empty one. */
  readonly motor: Motor | undefined;
  readonly stages: readonly LineStage[];
  /** Where it splits; none where it ends at a wheel. */
  readonly split: SplitPlace | undefined;
  /** Behind its last stage. */
  readonly end: LinePlace;
  readonly feeds: readonly Strand[];
  /** What it drives, where it ends at a wheel. */
  readonly output: OutputEvaluation | undefined;
}

interface Way {
  readonly turn: Turn;
  readonly isEstablished: boolean;
  readonly isDriven: boolean;
}

/** The steps of outputs by their stage, so that a shared one is found once. */
const stepsBy = (outputs: readonly OutputEvaluation[]): ReadonlyMap<Stage, Step> =>
  new Map([...outputs].reverse().flatMap(({ steps }) => steps.map((step) => [step.stage, step] as const)));

const ways = { "same way": 1, "opposite way": -1, "not known": 0 } as const;

/**
 * The whole drivetrain as a line in the order of drive: a shaft for every motor, which goes on where it feeds one thing
 * only, and splits where it feeds several.
 *
 * @example
 * const stages = [{ id: "one", kind: "pair", driver: 15, driven: 62 }];
 * const outputs = [{ id: "front", stages: [] }, { id: "rear", stages: [] }];
 * const [line] = driveLineOf(evaluate(parseBuild({ format: "meshwright-build/1", stages, outputs })));
 * [line!.stages.length, line!.feeds.map(({ id }) => id)]; // => [1, ["front", "rear"]]
 */
export function driveLineOf(evaluation: Evaluation): readonly Strand[] {
  const { build, mode, outputs } = evaluation;
  const positions = build.modes?.find((one) => one.id === mode)?.positions;
  const steps = stepsBy(outputs);
  const splits = new Map(splitsOf(build).map((place) => [place.id, place]));

  function along(
    list: readonly Stage[],
    before: Way,
    into: LineStage[],
    name: string | undefined,
    inside?: Stage,
  ): Way {
    let way = before;
    for (const [at, stage] of list.entries()) {
      const place: LinePlace = { ...(name !== undefined && { into: name }), at };
      const inner = innerOf(stage, positions);
      if (inner === undefined) {
        const step = steps.get(stage);
        const isSaid = stage.reverses !== undefined || directions[stage.kind].isSaid(stage);
        way = {
          turn: (way.turn * (step ? ways[step.turns] : 0) || 0) as Turn,
          isEstablished: way.isEstablished && isSaid,
          isDriven: way.isDriven,
        };
        into.push({ stage, place, step, lever: undefined, inside, ...way });
      } else {
        const all = inners[stage.kind]!.positions(stage);
        const stands = all.find(({ stages, released }) => (stages ?? released) === inner)!;
        if (typeof inner === "string") way = { turn: 0, isEstablished: false, isDriven: false };
        into.push({ stage, place, step: undefined, lever: { positions: all, stands }, inside, ...way });
        if (typeof inner !== "string") {
          const through = along(inner, way, into, `${stage.id}.${stands.id}`, stage);
          const { reverses } = stage;
          way = reverses === undefined ? through : { ...through, turn: (way.turn * (reverses ? -1 : 1) || 0) as Turn };
        }
      }
    }
    return way;
  }

  const evaluated = (id: string): OutputEvaluation | undefined => evaluation.output(id);

  function strand(
    head: Pick<Strand, "id" | "label" | "motor">,
    list: readonly Stage[],
    at: string | undefined,
    before: Way,
  ): Strand {
    const stages: LineStage[] = [];
    let way = along(list, before, stages, head.id || undefined);
    let split = at === undefined ? undefined : splits.get(at);
    let { id, label } = head;
    let last = list;
    // What feeds one thing only goes on as that.
    while (split?.feeds.length === 1) {
      const [one] = split.feeds;
      way = along(one!.stages, way, stages, one!.id);
      ({ id, label } = one!);
      last = one!.stages;
      split = evaluated(id) ? undefined : splits.get(id);
    }
    const output = split ? undefined : evaluated(id);
    const feeds = (split?.feeds ?? []).map((one) =>
      strand(
        { id: one.id, label: one.label, motor: undefined },
        one.stages,
        evaluated(one.id) ? undefined : one.id,
        way,
      ),
    );
    const end: LinePlace = { ...(id && { into: id }), at: last.length };
    return { id, label, motor: head.motor, stages, split, end, feeds, output };
  }

  const start: Way = { turn: 1, isEstablished: true, isDriven: true };
  const shared = outputs.some(({ output }) => !output.motor);
  return [
    ...(shared ? [strand({ id: "", label: undefined, motor: build.motor ?? {} }, build.stages, "centre", start)] : []),
    ...outputs.flatMap(({ id, output: { label, motor, stages } }) =>
      motor ? [strand({ id, label, motor }, stages, undefined, start)] : [],
    ),
  ];
}

/** Every shaft of a line, each before those that it feeds. */
export const strandsOf = (line: readonly Strand[]): readonly Strand[] =>
  line.flatMap((strand) => [strand, ...strandsOf(strand.feeds)]);
