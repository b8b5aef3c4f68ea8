import type { Evaluation } from "../evaluate/index.js";
import { driveLineOf, strandsOf, type Strand } from "./drive-line.js";
import { allWithin, blockOf, cellsOf, diametersOf, sketches, type Lettering, type PlacedLine } from "./drive-cells.js";
import { placeLevel } from "./drive-level.js";
import { Sheet } from "./drive-sheet.js";
import { placeUpright } from "./drive-upright.js";
import { placeWrapped } from "./drive-wrapped.js";

/** What a line is placed for. */
export interface LinePlacing {
  /** In pixels. */
  readonly width: number;
  readonly lettering: Lettering;
  /** From top to bottom, as on a narrow screen. */
  readonly isUpright?: boolean;
  /** Lines of text run from the right, and so does the line of drive. */
  readonly isRightToLeft?: boolean;
  /** Stages that nothing is known of, by id: the line is broken there. */
  readonly broken?: ReadonlySet<string>;
}

/** Life size on a screen of 96 pixels an inch. */
const natural = 96 / 25.4;
const smallest = 24;

const leaves = (line: readonly Strand[]): number => strandsOf(line).filter(({ output }) => output).length;

/**
 * Puts the line of drive in its place: side by side where there is room, else staff below staff, or from top to bottom. Gears are
 * to one scale, none smaller than 24 pixels or larger than 160; nothing lies over anything else.
 */
export function placeDriveLine(
  evaluation: Evaluation,
  { width, lettering, isUpright, isRightToLeft = false, broken = new Set() }: LinePlacing,
): PlacedLine {
  const line = driveLineOf(evaluation);
  const looks = sketches(line, isRightToLeft, broken);
  const [least, greatest] = diametersOf(looks);
  const axles = leaves(line);
  const most = isUpright ? Math.max(72, Math.min(150, width * 0.32)) : axles > 3 ? 92 : axles > 2 ? 118 : 150;
  const high = Math.min(natural, most / greatest);
  const low = Math.min(high, Math.max(smallest / least, 56 / greatest));
  // A scale that lets the smallest be seen, as far as the largest allows it.
  const readable = Math.min(160 / greatest, Math.max(high, smallest / least));
  const cells = (scale: number, room?: number) =>
    new Map(strandsOf(line).map((one) => [one, cellsOf(one, looks, scale, lettering, room)]));
  const totals = new Map(
    strandsOf(line).flatMap(({ output }) =>
      output ? [[output.id, blockOf(lettering.total(output.id))] as const] : [],
    ),
  );
  const sheet = new Sheet(width, isRightToLeft);
  const done = (form: PlacedLine["form"], scale: number): PlacedLine =>
    sheet.done({
      form,
      scale,
      isToScale: allWithin(looks, scale),
      isGuessed: [...looks.values()].some((one) => one.isGuessed),
    });
  if (isUpright) {
    const scale = Math.min(readable, (width * 0.42) / greatest);
    placeUpright(
      sheet,
      line,
      (room) => cells(scale, room),
      lettering,
      (room) => new Map([...totals].map(([id]) => [id, blockOf(lettering.total(id), room)])),
    );
    return done("upright", scale);
  }
  const tries = 7;
  for (let n = 0; n <= tries; n++) {
    const scale = readable + ((low - readable) * n) / tries;
    if (placeLevel(sheet, line, cells(scale), totals)) return done("level", scale);
  }
  const scale = Math.min(readable, Math.max(low, 96 / greatest));
  placeWrapped(sheet, line, cells(scale), totals, lettering);
  return done("wrapped", scale);
}
