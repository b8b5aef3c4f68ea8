/** A rectangle: two corners, the lesser first. */
export type Room = readonly [left: number, top: number, right: number, bottom: number];

/** What wants a label: where its mark stands, and how far the mark reaches around it. */
export interface Labelled {
  readonly x: number;
  readonly y: number;
  readonly reach: number;
  /** How wide its label is, in em. */
  readonly room: number;
}

/** Where the middle of a label's line stands; `y` is its base line. */
export interface Placed {
  readonly x: number;
  readonly y: number;
}

const meet = (a: Room, b: Room): boolean => a[0] < b[2] && b[0] < a[2] && a[1] < b[3] && b[1] < a[3];

/** Room above and below a base line, in em. */
const [rise, fall] = [0.78, 0.24];

/** The room of a text of a width in the middle of its line. */
function roomOf({ x, y }: Placed, wide: number, em: number): Room {
  const half = (wide * em) / 2;
  return [x - half, y - rise * em, x + half, y + fall * em];
}

/**
 * A place for each label, those that come first being served first: above its mark, below, or beside it, or beyond the
 * frame that the mark stands in. Never over a mark, a line, another label or the edge; where there is no such place, none.
 *
 * @param frame the box that marks can stand in
 * @param taken what else must stay free: lines and other texts
 * @param bounds what labels must stay within
 */
export function placeLabels(
  marks: readonly Labelled[],
  frame: Room,
  taken: readonly Room[],
  bounds: Room,
  em: number,
): readonly (Placed | undefined)[] {
  const [left, top, right, bottom] = frame;
  const edges: Room[] = [
    [left - 1, top, left + 1, bottom],
    [right - 1, top, right + 1, bottom],
    [left, top - 1, right, top + 1],
    [left, bottom - 1, right, bottom + 1],
  ];
  const around = ({ x, y, reach }: Labelled): Room => [x - reach, y - reach, x + reach, y + reach];
  const full = [...taken, ...edges, ...marks.map(around)];
  return marks.map(({ x, y, reach, room: wide }) => {
    const gap = 0.12 * em;
    const up = y - reach - gap - fall * em;
    const down = y + reach + gap + rise * em;
    const aside = reach + gap + (wide * em) / 2;
    const level = y + ((rise - fall) / 2) * em;
    const inside = x > left && x < right && y > top && y < bottom;
    const places: Placed[] = [
      { x, y: up },
      { x, y: down },
      { x: x + aside, y: level },
      { x: x - aside, y: level },
      ...[x + aside, x - aside].flatMap((at) => [
        { x: at, y: up },
        { x: at, y: down },
      ]),
    ];
    if (inside) places.push({ x, y: top - 2 * gap - fall * em }, { x, y: bottom + 2 * gap + rise * em });
    const free = places.find((place) => {
      const room = roomOf(place, wide, em);
      const within = room[0] >= bounds[0] && room[1] >= bounds[1] && room[2] <= bounds[2] && room[3] <= bounds[3];
      return within && !full.some((other) => meet(room, other));
    });
    if (free) full.push(roomOf(free, wide, em));
    return free;
  });
}
