import type { Check, Direction, Display, Drawn, Effects, Inner, Needs, Sample, Shape, Sure } from "./facets.js";
import type { Position, StageBase } from "./stage.js";

/** A box with a lever: the stage is what its selected position is. */
export interface SelectableStage<S = StageBase> extends StageBase {
  /** What kind of stage it is. */
  readonly kind: "selectable";
  /** The ways it can stand. */
  readonly positions: readonly Position<S>[];
  /** The id of the position that it stands in unless a mode says otherwise. */
  readonly selected: string;
}

export const shape: Shape = { positions: "[position]1-100!", selected: "id!" };

export const sample: Sample = {
  positions: [
    { id: "low", stages: [] },
    { id: "high", stages: [] },
  ],
  selected: "low",
};

export const check: Check<SelectableStage> = ({ positions, selected }, say) => {
  const known = positions.map((one) => one.id);
  if (!known.includes(selected)) say("error", "position-missing", "selected", { id: selected, known });
  const twice = known.find((id, n) => known.indexOf(id) < n);
  if (twice !== undefined) say("error", "id-repeated", "positions", { id: twice });
  for (const { id, stages, released } of positions)
    if (!stages === !released) say("error", "position-unclear", "positions", { id });
};

export const sure: Sure<SelectableStage> = ({ positions, selected }) => {
  const ids = new Set(positions.map(({ id }) => id));
  return ids.has(selected) && ids.size === positions.length && positions.every((one) => !one.stages !== !one.released);
};

/** Its stages do the work. */
export const effect: Effects<SelectableStage> = () => undefined;

export const direction: Direction<SelectableStage> = { turn: () => 1, isSaid: () => true };

export const display: Display<SelectableStage> = () => [];

export const needs: Needs<SelectableStage> = () => ({});

export const drawn: Drawn<SelectableStage> = () => undefined;

export const inner: Inner<SelectableStage> = {
  positions: ({ positions }) => positions,
  at(stage, position = stage.selected) {
    const one = stage.positions.find(({ id }) => id === position)!;
    return one.released ?? one.stages!;
  },
};
