import { round } from "../../shared/drawn/index.js";

/** Path data: a circle. Each half is exactly as wide as it is high twice: less, and both would be the larger part of an arc. */
export function circle(x: number, y: number, radius: number): string {
  const r = round(radius);
  return `M${round(x + r)} ${round(y)}a${r} ${r} 0 1 0 ${round(-2 * r)} 0a${r} ${r} 0 1 0 ${round(2 * r)} 0z`;
}

/** Path data: part of a circle between two angles in radians, clockwise. */
export function arc(x: number, y: number, radius: number, from: number, to: number): string {
  const at = (angle: number): string => `${round(x + radius * Math.cos(angle))} ${round(y + radius * Math.sin(angle))}`;
  return `M${at(from)}A${round(radius)} ${round(radius)} 0 ${to - from > Math.PI ? 1 : 0} 1 ${at(to)}`;
}

/** Path data: an arrowhead at a point, looking along an angle. */
export function head(x: number, y: number, angle: number, size: number): string {
  const corner = (side: number): string => {
    const turned = angle + Math.PI + side * 0.34;
    return `${round(x + size * Math.cos(turned))} ${round(y + size * Math.sin(turned))}`;
  };
  return `M${round(x)} ${round(y)}L${corner(1)}L${corner(-1)}z`;
}

/** Path data: a small cross. */
export const cross = (x: number, y: number, size: number): string =>
  `M${round(x - size)} ${round(y)}h${round(2 * size)}M${round(x)} ${round(y - size)}v${round(2 * size)}`;
