import type { Approximate, GearRadii, GearShape } from "../gears/index.js";
import type { Bounded } from "../exact/index.js";
import type { Fit } from "../fit/index.js";
import type { Stage } from "../stages/index.js";

/** A gear or pulley in its place. All axes lie on one line; lengths are in millimetres. */
export interface PlacedWheel {
  readonly stage: string;
  /** The stage's own name, where it has one. */
  readonly stageLabel?: string;
  readonly role: "driver" | "driven" | "idler";
  /** The wheel's own name. */
  readonly label?: string;
  readonly teeth: number;
  /** Where its axis lies; the first driven axis lies at 0, its driver on the near side of it. */
  readonly x: Approximate;
  readonly radii: GearRadii;
  /** Its tooth form; a pulley or sprocket has none here. */
  readonly shape?: GearShape;
  /** The angle of the middle of a tooth (of a ring: of a space) in radians, so that it meshes with its neighbour. */
  readonly phase: Approximate;
  /** Turns for one turn of the motor, below zero against it; undefined where that is not known. */
  readonly turns: Approximate | undefined;
}

/** Two wheels that drive one another. */
export interface Span {
  readonly stage: string;
  /** `mesh`: by their teeth. Else open runs of a belt or a chain. */
  readonly by: "mesh" | "belt" | "chain";
  readonly driver: PlacedWheel;
  readonly driven: PlacedWheel;
  /** Between their axes, with the opening: where they run. */
  readonly centre: Bounded;
  /** A third wheel keeps the belt taut: where it stands is not known. */
  readonly tensioner?: true;
}

/** Something that stands near a wheel, and the room between. */
export interface PlacedWall {
  readonly label?: string;
  readonly wheel: PlacedWheel;
  /** From the wheel's axis. */
  readonly distance: Bounded;
  /** From the tips to it. */
  readonly gap: Bounded;
  readonly needed: Bounded;
  readonly kept: boolean | undefined;
}

/** What a span is mounted in: the centre distances that can be set, as seen from the driven axis. */
export interface PlacedMount {
  readonly span: Span;
  readonly stageLabel?: string;
  readonly fit: Fit;
  /** The tightest of its limits at either end, between the axes, however it was measured. */
  readonly from?: Bounded;
  readonly to?: Bounded;
  readonly holes: readonly Bounded[];
  /** The driver swings about a point so far from the driven axis, on an arm so long. */
  readonly pivot?: { readonly distance: Approximate; readonly arm: Approximate };
  /** What the centre distance lacks, and at which end. */
  readonly short?: { readonly by: Bounded; readonly end: "from" | "to" | "hole" };
  readonly walls: readonly PlacedWall[];
  /** Diameters of the driver's shaft and of the driven gear's. */
  readonly shaft?: Approximate;
  readonly drivenShaft?: Approximate;
}

/** Gears in their places, and what has no place: stages whose geometry is not that of spur gears, or is not known. */
export interface Layout {
  readonly wheels: readonly PlacedWheel[];
  readonly spans: readonly Span[];
  readonly mounts: readonly PlacedMount[];
  readonly notDrawn: readonly Stage[];
}
