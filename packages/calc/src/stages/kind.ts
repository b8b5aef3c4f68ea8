import type { Effect } from "./effect.js";
import type { StageBase, Turn } from "./stage.js";

/**
 * The fields of an object, each with its shape in a few letters. Reader, Schema, stage editor and documentation all
 * derive from these.
 *
 * `count` a whole number from 1 to 1,000,000 · `number` any number · `positive` a number above 0 · `length` text with a
 * unit · `ratio` a printed ratio · `volts` as `positive` · `text` · `id` · `address` · `date` · `flag` · `any` ·
 * `a|b` one of these words · `[x]` a list, `[x]2-6` with so many · `{x}` a map by address · any other word: an object of
 * that name. A `!` at the end: must be there.
 */
export type Shape = Readonly<Record<string, string>>;

/** What is found to be odd or wrong about a stage that has the right shape. */
export type Say = (severity: "error" | "warning", code: string, field: string, message: string) => void;

/** All there is to know about one kind of stage. One file a kind; nothing else lists them. */
export interface Kind<S extends StageBase = StageBase> {
  readonly shape: Shape;
  /** Multiplies the stage's reduction in; answers which way it turns, unless the stage says so itself. */
  effect(stage: S, into: Effect): Turn;
  /** The stages that stand in for this one, or why nothing is driven. `position` overrides the selected one. */
  inner?(stage: S, position?: string): readonly StageBase[] | "free" | "held";
  /** What cannot be seen from the shape alone. */
  check?(stage: S, say: Say): void;
  /** Reads a stage of this kind as it is written in attributes, already trimmed: its own fields, or nothing. */
  parse?(text: string): object | "" | undefined;
  /** Writes a stage's counts as in attributes. */
  write?(stage: S): string;
}
