import type { Stage } from "../stages/index.js";
import type { Strand } from "./drive-line.js";
import { strandsOf } from "./drive-line.js";
import {
  isWithin,
  marksOf,
  motorMarks,
  splitMarks,
  wheelMarks,
  type Mark,
  type Marked,
  type LinePoint,
} from "./drive-marks.js";
import { sketchOf, usualModule, type Sketch } from "./drive-sketch.js";

/** A line of lettering, in pixels. */
export interface Lettered {
  readonly width: number;
  readonly height: number;
  /** How high it is where there is less room than it is wide: words do not fill their lines. */
  heightIn?(room: number): number;
}

/** What is lettered around things on the line, which the layout leaves room for. Keys are those of {@link PlacedCell}. */
export interface Lettering {
  /** Above a thing, or the first beside it. */
  head(key: string): readonly Lettered[];
  /** Below it. */
  foot(key: string): readonly Lettered[];
  /** On the shaft behind it: nothing where that is not lettered. */
  shaft(key: string): Lettered | undefined;
  /** The total of an output. */
  total(output: string): readonly Lettered[];
  /** The name of a shaft's staff. */
  label(strand: string): Lettered | undefined;
}

/** A rectangle, in pixels from the upper left. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** One thing on the line in its place: a stage by its id, or `motor:`, `split:`, `wheel:` and the id of its shaft. */
export interface PlacedCell {
  readonly key: string;
  readonly strand: string;
  /** Where its marks begin on the line. */
  readonly x: number;
  readonly y: number;
  readonly marks: readonly Mark[];
  /** What the marks take up. */
  readonly drawn: Box;
  readonly head: Box;
  readonly foot: Box;
}

/** A piece of shaft between things. */
export interface PlacedShaft {
  readonly points: readonly LinePoint[];
  /** The thing that it comes from; none where it comes from another shaft. */
  readonly after?: string;
  /** Room for what is lettered on it, the sense of rotation before it. */
  readonly note?: Box;
}

/** The whole line in its place. */
export interface PlacedLine {
  /** `level`: the whole tree side by side; `wrapped`: staff below staff; `upright`: from top to bottom. */
  readonly form: "level" | "wrapped" | "upright";
  readonly isRightToLeft: boolean;
  readonly width: number;
  readonly height: number;
  /** Pixels for a millimetre. */
  readonly scale: number;
  /** Whether every gear is as large as the scale says. */
  readonly isToScale: boolean;
  /** Whether the pitch of some is not known, and with it their size. */
  readonly isGuessed: boolean;
  readonly cells: readonly PlacedCell[];
  readonly shafts: readonly PlacedShaft[];
  /** The names of staffs. */
  readonly labels: readonly (Box & { readonly strand: string })[];
  readonly totals: readonly (Box & { readonly output: string })[];
}

/** A thing on the line before it has its place. */
export interface Cell extends Marked {
  readonly key: string;
  readonly head: Lettered;
  readonly foot: Lettered;
  readonly shaft: Lettered | undefined;
}

const widest = (lines: readonly Lettered[]): number => Math.max(0, ...lines.map(({ width }) => width));

/** Lines below each other; broken where they are wider than there is room. */
export function blockOf(lines: readonly Lettered[], room = Infinity): Lettered {
  const heightOf = (one: Lettered): number =>
    one.width <= room ? one.height : (one.heightIn?.(room) ?? one.height * Math.ceil(one.width / room));
  const height = lines.reduce((sum, one) => sum + heightOf(one), 0);
  return { width: Math.min(room, widest(lines)), height };
}

const opposite = { left: "right", right: "left" } as const;

/** The stages of all shafts with what they look like. What is drawn from right to left is seen as in a mirror: sides change. */
export function sketches(
  line: readonly Strand[],
  isMirrored: boolean,
  broken: ReadonlySet<string>,
): ReadonlyMap<Stage, Sketch> {
  const all = strandsOf(line).flatMap(({ stages }) => stages);
  const usual = usualModule(all.map(({ stage }) => stage));
  return new Map(
    all.map(({ stage, lever }) => {
      if (broken.has(stage.id)) return [stage, { by: "break", wheels: [], isGuessed: false }];
      const sketch = sketchOf(stage, usual);
      const lanes = lever && { lanes: lever.positions.length, lane: lever.positions.indexOf(lever.stands) };
      const side = isMirrored && sketch.side ? { side: opposite[sketch.side] } : undefined;
      return [stage, { ...sketch, ...side, ...lanes }];
    }),
  );
}

/** The things on a shaft in their order. */
export function cellsOf(
  strand: Strand,
  looks: ReadonlyMap<Stage, Sketch>,
  scale: number,
  lettering: Lettering,
  room = Infinity,
): readonly Cell[] {
  const cell = (key: string, marked: Marked): Cell => ({
    ...marked,
    key,
    head: blockOf(lettering.head(key), room),
    foot: blockOf(lettering.foot(key), room),
    shaft: lettering.shaft(key),
  });
  const { id, motor, stages, split, output } = strand;
  return [
    ...(motor ? [cell(`motor:${id}`, motorMarks())] : []),
    ...stages.map(({ stage }) => cell(stage.id, marksOf(looks.get(stage)!, scale))),
    ...(split && strand.feeds.length ? [cell(`split:${id}`, splitMarks(split.split?.kind === "differential"))] : []),
    ...(output ? [cell(`wheel:${output.id}`, wheelMarks(output.output.axle))] : []),
  ];
}

/** The least and the greatest of the diameters that are drawn to scale, in millimetres. */
export function diametersOf(looks: ReadonlyMap<Stage, Sketch>): readonly [least: number, greatest: number] {
  const all = [...looks.values()].flatMap(({ by, wheels }) => {
    const outer = by === "worm" || by === "planets" || by === "pins" || by === "inside" ? wheels.slice(1) : wheels;
    return outer.map(({ diameter }) => diameter);
  });
  return all.length ? [Math.min(...all), Math.max(...all)] : [12, 40];
}

/** Whether all that is drawn to scale is as large as a scale says. */
export const allWithin = (looks: ReadonlyMap<Stage, Sketch>, scale: number): boolean =>
  diametersOf(looks).every((diameter) => isWithin(diameter, scale));
