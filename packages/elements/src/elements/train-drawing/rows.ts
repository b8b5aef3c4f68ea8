import type { Layout, PlacedWheel } from "@meshwright/calc/layout";
import { reachOf } from "./sheet.js";

/** How far apart the axes of neighbours stand at the least, in lines of text, half of them. */
const apart = 3.6;

/** The stages of a layout in the order of drive. */
export const planesOf = ({ wheels }: Layout): readonly string[] => [...new Set(wheels.map(({ stage }) => stage))];

/** Some stages of a layout. Its wheels stand so far from where they stood. */
export function partOf(layout: Layout, stages: readonly string[], by = 0): Layout {
  const moved = new Map<PlacedWheel, PlacedWheel>();
  for (const wheel of layout.wheels)
    if (stages.includes(wheel.stage)) moved.set(wheel, by ? { ...wheel, x: wheel.x + by } : wheel);
  const spans = layout.spans.flatMap((span) => {
    const [driver, driven] = [moved.get(span.driver), moved.get(span.driven)];
    return driver && driven ? [{ ...span, driver, driven }] : [];
  });
  const mounts = layout.mounts.flatMap((mount) => {
    const span = spans.find((one) => one.stage === mount.span.stage && moved.get(mount.span.driven) === one.driven);
    const walls = mount.walls.map((wall) => ({ ...wall, wheel: moved.get(wall.wheel) ?? wall.wheel }));
    return span ? [{ ...mount, span, walls }] : [];
  });
  return { wheels: [...moved.values()], spans, mounts, notDrawn: [] };
}

/** The width of some stages, in millimetres. */
function widthOf(layout: Layout, stages: readonly string[]): number {
  const wheels = layout.wheels.filter(({ stage }) => stages.includes(stage));
  const ends = wheels.map((wheel) => [wheel.x - reachOf(wheel), wheel.x + reachOf(wheel)] as const);
  return Math.max(...ends.map(([, to]) => to)) - Math.min(...ends.map(([from]) => from));
}

/**
 * The stages of a long train in rows, one below the other, each as long as there is room for at a scale at which its axes can be
 * told apart and lettered.
 */
export function rowsOf(layout: Layout, width: number, em: number): readonly (readonly string[])[] {
  const stages = planesOf(layout);
  const centres = layout.spans.map(({ centre }) => centre.low.toNumber()).sort((a, b) => a - b);
  const scale = (apart * em) / centres[Math.floor(centres.length / 2)]!;
  const rows: string[][] = [];
  for (const stage of stages) {
    const last = rows.at(-1);
    if (last && widthOf(layout, [...last, stage]) * scale <= width - 2.2 * em) last.push(stage);
    else rows.push([stage]);
  }
  return rows;
}
