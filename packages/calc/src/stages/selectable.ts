import type { Kind } from "./kind.js";
import type { StageBase } from "./stage.js";

/** One way a selectable stage can stand: with stages of its own, or with its output let go of or held. */
export interface Position<S = StageBase> {
  readonly id: string;
  readonly label?: string;
  readonly stages?: readonly S[];
  readonly released?: "free" | "held";
}

/** A box with a lever: the stage is what its selected position is. */
export interface SelectableStage<S = StageBase> extends StageBase {
  readonly kind: "selectable";
  readonly positions: readonly Position<S>[];
  readonly selected: string;
}

export const selectable: Kind<SelectableStage> = {
  shape: { positions: "[position]1-100!", selected: "id!" },
  effect: () => 1,
  inner(stage, position = stage.selected) {
    const at = stage.positions.find((one) => one.id === position)!;
    return at.released ?? at.stages!;
  },
  check(stage, say) {
    const ids = stage.positions.map((one) => one.id);
    if (!ids.includes(stage.selected))
      say(
        "error",
        "position-missing",
        "selected",
        `No position "${stage.selected}"; expected one of ${ids.join(", ")}.`,
      );
    if (new Set(ids).size < ids.length) say("error", "id-repeated", "positions", "Two positions have one id.");
    for (const one of stage.positions)
      if (!one.stages === !one.released)
        say("error", "position-unclear", "positions", `Position "${one.id}" needs either stages or released.`);
  },
};
