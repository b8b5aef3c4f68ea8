import type { Sketch } from "./drive-sketch.js";

/** A point along the line and across it, in pixels. */
export type LinePoint = readonly [along: number, across: number];

/** A gear seen from the side; a ring with teeth inside has its tip circle within its root circle. */
export interface WheelMark {
  readonly is: "wheel";
  readonly at: LinePoint;
  readonly pitch: number;
  readonly tip: number;
  readonly root: number;
  readonly teeth: number;
  /** Where the middle of a tooth stands (of a ring: of a space), in radians from straight on. */
  readonly phase: number;
  readonly isGuessed: boolean;
}

/** What is drawn of the line of drive: plain shapes, in pixels, along and across the line from where a cell begins. */
export type Mark =
  | WheelMark
  /** A bevel pinion and its ring, seen from above: their cones meet at `apex`. */
  | {
      readonly is: "cones";
      readonly apex: LinePoint;
      readonly pinion: number;
      readonly ring: number;
      /** −1: the ring lies before the line, 1: behind it. */
      readonly side: 1 | -1;
      readonly teeth: readonly [number, number];
      readonly isGuessed: boolean;
    }
  /** A belt or chain runs from one place to the other. */
  | { readonly is: "run"; readonly from: LinePoint; readonly to: LinePoint; readonly isChain: boolean }
  | {
      readonly is: "worm";
      readonly from: number;
      readonly to: number;
      readonly across: number;
      readonly radius: number;
      readonly starts: number;
    }
  | {
      readonly is: "pins";
      readonly at: LinePoint;
      readonly radius: number;
      readonly pins: number;
      readonly lobes: number;
      readonly isGuessed: boolean;
    }
  | { readonly is: "box"; readonly length: number; readonly half: number; readonly from: "printed" | "turned" }
  | { readonly is: "lever"; readonly length: number; readonly lanes: readonly number[]; readonly lane: number }
  /** Nothing is known: the shaft ends, and begins again. */
  | { readonly is: "break"; readonly length: number }
  | { readonly is: "motor"; readonly length: number; readonly half: number }
  | { readonly is: "tyre"; readonly at: LinePoint; readonly radius: number }
  /** A spool is one piece; a differential has its gears drawn. */
  | { readonly is: "spool" | "differential"; readonly at: LinePoint; readonly half: number }
  /** The line itself; fine where it goes through a mesh. */
  | { readonly is: "shaft"; readonly points: readonly LinePoint[]; readonly isFine?: boolean };

/** The marks of one thing on the line, and the room that they take along it, before it (above) and behind it (below). */
export interface Marked {
  readonly marks: readonly Mark[];
  readonly length: number;
  readonly before: number;
  readonly after: number;
}

const smallest = 24;
const largest = 160;

/** The pixels of a diameter at a scale; what would be too small to see or too large for a staff is drawn as large as it may be. */
const pixelsOf = (diameter: number, scale: number): number => Math.min(largest, Math.max(smallest, diameter * scale));

export const isWithin = (diameter: number, scale: number): boolean => {
  const size = diameter * scale;
  return size >= smallest - 1e-6 && size <= largest + 1e-6;
};

const turn = 2 * Math.PI;

function wheel(
  at: LinePoint,
  diameter: number,
  teeth: number,
  phase: number,
  isGuessed: boolean,
  inward = false,
): WheelMark {
  const pitch = diameter / 2;
  // Full-depth teeth; of very few teeth the root would leave nothing.
  const depth = diameter / Math.max(teeth, 5);
  const [tip, root] = inward ? [pitch - depth, pitch + 1.25 * depth] : [pitch + depth, pitch - 1.25 * depth];
  return { is: "wheel", at, pitch, tip, root, teeth, phase, isGuessed };
}

/** How far the teeth of a wheel stand from a tooth at an angle, in teeth. */
function offAt({ teeth, phase }: WheelMark, angle: number): number {
  const step = turn / teeth;
  const off = (angle - phase) / step;
  return off - Math.floor(off);
}

/** The phase of a wheel that meets another one, which lies before it, with a tooth in a space of it. */
function meeting(before: WheelMark, teeth: number): number {
  // Going one way round the first is going the other way round the second.
  const off = offAt(before, 0);
  return Math.PI + ((off + 0.5) * turn) / teeth;
}

function meshed(sketch: Sketch, scale: number): Marked {
  const marks: Mark[] = [];
  let along = 0;
  let half = 0;
  let last: WheelMark | undefined;
  const centres: LinePoint[] = [];
  for (const { teeth, diameter } of sketch.wheels) {
    const size = pixelsOf(diameter, scale);
    const at: LinePoint = [along + size / 2, 0];
    last = wheel(at, size, teeth, last ? meeting(last, teeth) : 0, sketch.isGuessed);
    marks.push(last);
    centres.push(at);
    along += size;
    half = Math.max(half, last.tip);
  }
  const [first, end] = [centres[0]!, centres.at(-1)!];
  const shafts: Mark[] = [
    { is: "shaft", points: [[0, 0], first] },
    { is: "shaft", points: centres, isFine: true },
    { is: "shaft", points: [end, [along, 0]] },
  ];
  return { marks: [...marks, ...shafts], length: along, before: half, after: half };
}

/** A gear inside a ring: both on the line, the gear where the drive comes in. */
function inside({ wheels, isGuessed }: Sketch, scale: number): Marked {
  const [small, large] = wheels as [Sketch["wheels"][0], Sketch["wheels"][0]];
  const outer = pixelsOf(large.diameter, scale);
  const inner = Math.min(pixelsOf(small.diameter, scale), outer * 0.8);
  const ring = wheel([outer / 2 + 3, 0], outer, large.teeth, Math.PI, isGuessed, true);
  const gear = wheel([3 + inner / 2, 0], inner, small.teeth, Math.PI, isGuessed);
  const half = ring.root + 4;
  const length = outer + 6;
  const marks: Mark[] = [
    ring,
    gear,
    { is: "shaft", points: [[0, 0], gear.at] },
    { is: "shaft", points: [gear.at, ring.at], isFine: true },
    { is: "shaft", points: [ring.at, [length, 0]] },
  ];
  return { marks, length, before: half, after: half };
}

function cones({ wheels, isGuessed, side }: Sketch, scale: number): Marked {
  const [pinion, ring] = wheels.map(({ diameter }) => pixelsOf(diameter, scale) / 2) as [number, number];
  const length = ring * 2;
  const apex: LinePoint = [ring, 0];
  const thick = pinion + Math.max(4, pinion * 0.3);
  const sign = side === "right" ? 1 : -1;
  const teeth = wheels.map((one) => one.teeth) as unknown as readonly [number, number];
  const marks: Mark[] = [
    { is: "cones", apex, pinion, ring, side: sign, teeth, isGuessed: isGuessed || side === undefined },
    { is: "shaft", points: [[0, 0], apex] },
    { is: "shaft", points: [apex, [length, 0]] },
  ];
  const [far, near] = [thick + 6, pinion + 2];
  return { marks, length, before: sign < 0 ? far : near, after: sign < 0 ? near : far };
}

function belted({ by, wheels, isGuessed }: Sketch, scale: number): Marked {
  const [one, two] = wheels.map(({ diameter }) => pixelsOf(diameter, scale)) as [number, number];
  const between = Math.max((one + two) / 2 + 14, (one + two) * 0.72);
  const [from, to]: [LinePoint, LinePoint] = [
    [one / 2 + 3, 0],
    [one / 2 + 3 + between, 0],
  ];
  const length = to[0] + two / 2 + 3;
  const [driver, driven] = [
    wheel(from, one, wheels[0]!.teeth, 0, isGuessed),
    wheel(to, two, wheels[1]!.teeth, 0, isGuessed),
  ];
  const half = Math.max(one, two) / 2 + 4;
  const marks: Mark[] = [
    driver,
    driven,
    { is: "run", from: [from[0], one / 2 + 2], to: [to[0], two / 2 + 2], isChain: by === "chain" },
    { is: "shaft", points: [[0, 0], from] },
    { is: "shaft", points: [to, [length, 0]] },
  ];
  return { marks, length, before: half, after: half };
}

function wormed({ wheels, isGuessed }: Sketch, scale: number): Marked {
  const [{ teeth: starts }, { teeth, diameter }] = wheels as [Sketch["wheels"][0], Sketch["wheels"][0]];
  const size = Math.max(40, pixelsOf(diameter, scale));
  const radius = Math.max(6, size * 0.11);
  const across = -(size / 2 + radius);
  const room = Math.max(size, 44) + 20;
  const middle = room / 2;
  const driven = wheel([middle, 0], size, teeth, -Math.PI / 2, isGuessed);
  const [from, to] = [middle - Math.min(26, size * 0.42), middle + Math.min(26, size * 0.42)];
  const marks: Mark[] = [
    driven,
    { is: "worm", from, to, across, radius, starts },
    {
      is: "shaft",
      points: [
        [0, 0],
        [5, 0],
        [5, across],
        [to + 4, across],
      ],
    },
    { is: "shaft", points: [driven.at, [room, 0]] },
  ];
  return { marks, length: room, before: size / 2 + 2 * radius + 2, after: driven.tip };
}

function planetary({ wheels, planets = 3, isGuessed }: Sketch, scale: number): Marked {
  const [sun, ring] = wheels as [Sketch["wheels"][0], Sketch["wheels"][0]];
  const size = Math.max(56, pixelsOf(ring.diameter, scale));
  const unit = size / ring.teeth;
  const outer = wheel([size / 2 + 6, 0], size, ring.teeth, 0, isGuessed, true);
  const middle = outer.at;
  const inner = wheel(middle, unit * sun.teeth, sun.teeth, 0, isGuessed);
  const count = Math.max(1, Math.round((ring.teeth - sun.teeth) / 2));
  const orbit = (unit * (sun.teeth + count)) / 2;
  const shown = Math.min(planets, 8);
  const round = Array.from({ length: shown }, (_, n) => {
    const angle = -Math.PI / 2 + (n * turn) / shown;
    const at: LinePoint = [middle[0] + orbit * Math.cos(angle), orbit * Math.sin(angle)];
    return wheel(at, unit * count, count, angle + Math.PI + Math.PI / count, isGuessed);
  });
  const half = outer.root + 4;
  const length = size + 12;
  const marks: Mark[] = [
    outer,
    ...round,
    inner,
    { is: "shaft", points: [[0, 0], middle] },
    { is: "shaft", points: [middle, [length, 0]] },
  ];
  return { marks, length, before: half, after: half };
}

function pinned({ wheels, isGuessed }: Sketch, scale: number): Marked {
  const [disc, ring] = wheels as [Sketch["wheels"][0], Sketch["wheels"][0]];
  const radius = Math.max(56, pixelsOf(ring.diameter, scale)) / 2;
  const at: LinePoint = [radius + 6, 0];
  const length = 2 * radius + 12;
  const marks: Mark[] = [
    { is: "pins", at, radius, pins: ring.teeth, lobes: disc.teeth, isGuessed },
    { is: "shaft", points: [[0, 0], at] },
    { is: "shaft", points: [at, [length, 0]] },
  ];
  return { marks, length, before: radius + 6, after: radius + 6 };
}

const boxed = ({ from }: Sketch): Marked => ({
  marks: [{ is: "box", length: 64, half: 24, from: from! }],
  length: 64,
  before: 24,
  after: 24,
});

/** The lanes of a lever: the one that stands lies on the line. */
function levered({ lanes = 1, lane = 0 }: Sketch): Marked {
  const gap = 15;
  const list = Array.from({ length: lanes }, (_, n) => (n - lane) * gap);
  return {
    marks: [{ is: "lever", length: 68, lanes: list, lane }],
    length: 68,
    before: lane * gap + 10,
    after: (lanes - 1 - lane) * gap + 10,
  };
}

const broken = (): Marked => ({
  marks: [{ is: "break", length: 60 }],
  length: 60,
  before: 16,
  after: 16,
});

const makers: Readonly<Record<Sketch["by"], (sketch: Sketch, scale: number) => Marked>> = {
  mesh: meshed,
  inside,
  cones,
  belt: belted,
  chain: belted,
  worm: wormed,
  planets: planetary,
  pins: pinned,
  box: boxed,
  lever: levered,
  break: broken,
};

/**
 * The marks of a stage at a scale.
 *
 * @param scale pixels for a millimetre
 */
export const marksOf = (sketch: Sketch, scale: number): Marked => makers[sketch.by](sketch, scale);

export const motorMarks = (): Marked => ({
  marks: [
    { is: "motor", length: 46, half: 21 },
    {
      is: "shaft",
      points: [
        [46, 0],
        [54, 0],
      ],
    },
  ],
  length: 54,
  before: 21,
  after: 21,
});

/** Where a shaft splits: everything held together, or a differential between. */
export const splitMarks = (isOpen: boolean): Marked => ({
  marks: isOpen
    ? [
        { is: "differential", at: [14, 0], half: 11 },
        {
          is: "shaft",
          points: [
            [0, 0],
            [3, 0],
          ],
        },
        {
          is: "shaft",
          points: [
            [25, 0],
            [28, 0],
          ],
        },
      ]
    : [
        { is: "spool", at: [14, 0], half: 6 },
        {
          is: "shaft",
          points: [
            [0, 0],
            [28, 0],
          ],
        },
      ],
  length: 28,
  before: 12,
  after: 12,
});

/** The end of a shaft: what drives the two wheels, where that is known, and one of them. */
export function wheelMarks(axle: "spool" | "differential" | undefined): Marked {
  const radius = 25;
  const before = axle ? 30 : 0;
  const end = before + 14 + radius;
  const marks: Mark[] = [{ is: "tyre", at: [end, 0], radius }];
  if (axle) marks.push({ is: axle, at: [14, 0], half: axle === "spool" ? 5 : 9 });
  if (axle === "differential") {
    marks.push(
      {
        is: "shaft",
        points: [
          [0, 0],
          [5, 0],
        ],
      },
      {
        is: "shaft",
        points: [
          [23, 0],
          [end, 0],
        ],
      },
    );
  } else
    marks.push({
      is: "shaft",
      points: [
        [0, 0],
        [end, 0],
      ],
    });
  return { marks, length: end + radius, before: radius, after: radius };
}
