import type { Box, Cell, PlacedCell, PlacedLine, PlacedShaft } from "./drive-cells.js";
import type { LinePoint } from "./drive-marks.js";

type Mutable<T> = { -readonly [Key in keyof T]: T[Key] };

/** The room between a drawing and its lettering. */
export const clear = 6;
/** A sense of rotation stands before what is lettered on a shaft. */
export const sense = 16;

const boxOf = (x: number, y: number, { width, height }: { readonly width: number; readonly height: number }): Box => ({
  x,
  y,
  width,
  height,
});

/** What has been placed so far. Lines of text run from the left here; `done` turns it round where they do not. */
export class Sheet {
  readonly width: number;
  readonly #isRightToLeft: boolean;
  readonly #cells: PlacedCell[] = [];
  readonly #shafts: PlacedShaft[] = [];
  readonly #labels: (Box & { strand: string })[] = [];
  readonly #totals: (Box & { output: string })[] = [];
  #bottom = 0;

  constructor(width: number, isRightToLeft: boolean) {
    this.width = width;
    this.#isRightToLeft = isRightToLeft;
  }

  #reach(...boxes: readonly Box[]): void {
    for (const { y, height } of boxes) this.#bottom = Math.max(this.#bottom, y + height);
  }

  /** A thing on a level line, lettered above and below at the staff's own heights. */
  level(strand: string, cell: Cell, x: number, y: number, headBottom: number, footTop: number): void {
    const { key, marks, length, before, after, head, foot } = cell;
    const middle = x + length / 2;
    const placed: PlacedCell = {
      key,
      strand,
      x,
      y,
      marks,
      drawn: { x, y: y - before, width: length, height: before + after },
      head: boxOf(middle - head.width / 2, headBottom - head.height, head),
      foot: boxOf(middle - foot.width / 2, footTop, foot),
    };
    this.#cells.push(placed);
    this.#reach(placed.drawn, placed.head, placed.foot);
  }

  /** A thing on an upright line, lettered beside it. */
  upright(strand: string, cell: Cell, x: number, y: number, textX: number, textY: number): void {
    const { key, marks, length, before, after, head, foot } = cell;
    const placed: PlacedCell = {
      key,
      strand,
      x,
      y,
      marks,
      drawn: { x: x - after, y, width: before + after, height: length },
      head: boxOf(textX, textY, head),
      foot: boxOf(textX, textY + head.height, foot),
    };
    this.#cells.push(placed);
    this.#reach(placed.drawn, placed.head, placed.foot);
  }

  shaft(points: readonly LinePoint[], after?: string, note?: Box): void {
    this.#shafts.push({ points, ...(after !== undefined && { after }), ...(note && { note }) });
    this.#bottom = Math.max(this.#bottom, ...points.map(([, y]) => y));
    if (note) this.#reach(note);
  }

  label(strand: string, box: Box): void {
    this.#labels.push({ ...box, strand });
    this.#reach(box);
  }

  total(output: string, box: Box): void {
    this.#totals.push({ ...box, output });
    this.#reach(box);
  }

  done(known: Pick<PlacedLine, "form" | "scale" | "isToScale" | "isGuessed">): PlacedLine {
    const { width } = this;
    const isRightToLeft = this.#isRightToLeft;
    const turned = <B extends Box>(box: B): B => (isRightToLeft ? { ...box, x: width - box.x - box.width } : box);
    const spot = ([x, y]: LinePoint): LinePoint => [isRightToLeft ? width - x : x, y];
    const cells = this.#cells.map((cell): PlacedCell => {
      const { x, drawn, head, foot } = cell;
      return {
        ...cell,
        x: isRightToLeft ? width - x : x,
        drawn: turned(drawn),
        head: turned(head),
        foot: turned(foot),
      };
    });
    const shafts = this.#shafts.map((shaft): PlacedShaft => {
      const result: Mutable<PlacedShaft> = { ...shaft, points: shaft.points.map(spot) };
      if (shaft.note) result.note = turned(shaft.note);
      return result;
    });
    return {
      ...known,
      isRightToLeft,
      width,
      height: Math.ceil(this.#bottom),
      cells,
      shafts,
      labels: this.#labels.map(turned),
      totals: this.#totals.map(turned),
    };
  }
}
