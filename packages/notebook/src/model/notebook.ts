import type { Build, ChangeSet, Output, Part } from "@meshwright/calc/drivetrain";
import type { ColumnMeaning, SheetField } from "@meshwright/calc/parts";

/** A node of the post, as the rich-text library writes it to JSON. */
export interface PostNode {
  readonly type: string;
  readonly attrs?: Readonly<Record<string, unknown>>;
  readonly content?: readonly PostNode[];
  readonly marks?: readonly { readonly type: string; readonly attrs?: Readonly<Record<string, unknown>> }[];
  readonly text?: string;
}

/** What was read off at the bench for one line of the card, with the counts that it was read with. */
export interface BenchNote {
  /** Which line: an output's id, or a stage's. */
  readonly of: string;
  /** As it was typed in. */
  readonly text: string;
  /** A day of the calendar. */
  readonly date: string;
  readonly with: ChangeSet;
}

/** One run: what was read off while driving. Text as it was typed in, units and all. */
export interface Run {
  readonly date: string;
  readonly motor?: string;
  readonly ambient?: string;
  readonly minutes?: string;
  readonly charge?: string;
  readonly note?: string;
}

/** A state of the drivetrain that was kept by date. */
interface Version {
  readonly date: string;
  readonly note: string;
  readonly build: Build;
}

/** How the drivetrain stood when a day's work was done. */
interface Day {
  readonly date: string;
  readonly build: Build;
}

/** An axle that was taken off: its stages with their counts, its tyre, and since when it lies on the shelf. */
export interface Assembly {
  readonly name: string;
  readonly date: string;
  readonly axle: Output;
}

/** The state that a file was saved with: what two people's notebooks have in common later. */
export interface Handed {
  readonly key: string;
  /** ISO 8601, in UTC. */
  readonly at: string;
  readonly title: string;
  readonly build?: Build;
  readonly post?: PostNode;
}

/** One line of the notebook's history. */
interface LogLine {
  /** ISO 8601, in UTC. */
  readonly at: string;
  readonly what: string;
}

/** What a table's columns were said to mean, for the next time that a table has the same heads. */
export type SheetMeaning = Readonly<Record<string, SheetField | "unused" | ColumnMeaning>>;

/** A whole notebook: all that is kept, and all that a file holds. */
export interface Notebook {
  readonly format: "meshwright-notebook/1";
  /** Never shown; the same in every copy. */
  readonly id: string;
  readonly title: string;
  /** None until the first two gears are known. */
  readonly build?: Build;
  /** Parts that came before the drivetrain; afterwards they are the drivetrain's. */
  readonly shelf?: readonly Part[];
  readonly post?: PostNode;
  /** Numbers of the post that are only text, as sentence and number: nobody asks about them again. */
  readonly onlyText?: readonly string[];
  /** By the heads of a sheet. */
  readonly sheets?: Readonly<Record<string, SheetMeaning>>;
  readonly bench?: readonly BenchNote[];
  /** What was noted beside a line of the order: "ordered 3 October". */
  readonly orders?: Readonly<Record<string, string>>;
  readonly runs?: readonly Run[];
  readonly versions?: readonly Version[];
  /** How the drivetrain stood at the end of the last days on which it was changed, the latest last. */
  readonly days?: readonly Day[];
  readonly assemblies?: readonly Assembly[];
  /** The last files that were saved of it, the latest last. */
  readonly handed?: readonly Handed[];
  /** The latest last. */
  readonly log?: readonly LogLine[];
}

/** What an edit touches. */
export type Fields = Omit<Notebook, "format" | "id">;

export const emptyTitle = "A new drivetrain";

/** An empty notebook. */
export const newNotebook = (id: string, title = emptyTitle): Notebook => ({
  format: "meshwright-notebook/1",
  id,
  title,
});
