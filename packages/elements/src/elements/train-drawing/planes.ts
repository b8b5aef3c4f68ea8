import { svg, type SVGTemplateResult } from "lit/html.js";
import type { Layout, PlacedWheel } from "@meshwright/calc/layout";
import { linesOf, roomFor, round } from "../../shared/drawn/index.js";
import { planesOf } from "./rows.js";
import { reachOf, type Sheet } from "./sheet.js";

export interface PlaneWords {
  /** What it is; empty where that was said above. */
  readonly plan: string;
  /** What the first shaft hangs on, and the last. */
  readonly from: string;
  readonly to: string;
}

/** What a wheel looks like from above, as far as its pitch circle: wheels in mesh touch. A ring is cut open. */
function sides(wheel: PlacedWheel, sheet: Sheet): readonly (readonly [from: number, to: number])[] {
  const { x, radii } = wheel;
  const at = sheet.x(x);
  const [pitch, outer] = [radii.reference * sheet.scale, reachOf(wheel) * sheet.scale];
  return radii.tip < radii.root
    ? [
        [at - outer, at - pitch],
        [at + pitch, at + outer],
      ]
    : [[at - pitch, at + pitch]];
}

/**
 * The drive from above: each stage in a layer of its own, its wheels from the side, and the shafts that go from one layer to the
 * next; what the first shaft comes from and what the last one goes to.
 */
export function drawPlanes(
  layout: Layout,
  sheet: Sheet,
  top: number,
  words: PlaneWords,
): { readonly picture: SVGTemplateResult; readonly height: number } {
  const { em, width } = sheet;
  const small = 0.88 * em;
  const thick = 0.56 * em;
  const texts: SVGTemplateResult[] = [];
  const bars: string[] = [];
  const hatches: string[] = [];
  /** Where a shaft begins and ends, by its place. */
  const shafts = new Map<number, readonly [number, number]>();
  const reach = (x: number, from: number, to: number): void => {
    const [a, b] = shafts.get(x) ?? [from, to];
    shafts.set(x, [Math.min(a, from), Math.max(b, to)]);
  };
  let y = top;
  const letter = (text: string, x: number, anchor: "start" | "middle" | "end", kind = "few"): void => {
    const half = (roomFor(text) * small) / 2;
    const [least, most] = { start: [0, width - 2 * half], middle: [half, width - half], end: [2 * half, width] }[anchor] as [number, number]; // prettier-ignore
    texts.push(
      svg`<text class=${kind} x=${round(Math.max(least, Math.min(most, x)))} y=${round(y)} text-anchor=${anchor}>${text}</text>`,
    );
  };
  for (const line of words.plan ? linesOf(words.plan, (width / small) * 0.95) : []) {
    y += 1.2 * em;
    letter(line, width / 2, "middle");
  }
  const { wheels } = layout;
  const [first, last] = [wheels[0]!, wheels.at(-1)!];
  const end = (text: string, x: number): void => {
    for (const line of linesOf(text, (width / small) * 0.95)) {
      y += 1.25 * em;
      letter(line, x, "middle", "few end");
    }
  };
  const firstX = round(sheet.x(first.x));
  end(words.from, firstX);
  let before = y + 0.25 * em;
  reach(firstX, before, before);
  for (const stage of planesOf(layout)) {
    const own = wheels.filter((wheel) => wheel.stage === stage);
    const arriving = round(sheet.x(own[0]!.x));
    const label = own[0]!.stageLabel;
    const ends = own.flatMap((wheel) => sides(wheel, sheet)).flat();
    const [left, right] = [Math.min(...ends), Math.max(...ends)];
    const wide = label === undefined ? 0 : roomFor(label) * small + 0.6 * em;
    const beside = label === undefined || width - right > wide || left > wide;
    if (!beside) {
      // No room at its side: above it, clear of the shaft that comes down.
      const after = width - arriving > width / 2;
      const room = (after ? width - arriving : arriving) - 0.5 * em;
      const lines = linesOf(label, (room / small) * 0.95);
      y += 0.3 * em;
      for (const line of lines) {
        y += 1.15 * em;
        letter(line, arriving + (after ? 0.5 : -0.5) * em, after ? "start" : "end");
      }
    }
    y += 1.35 * em;
    if (beside && label !== undefined) {
      y += 0.3 * em;
      if (width - right > wide) letter(label, right + 0.5 * em, "start");
      else letter(label, left - 0.5 * em, "end");
      y -= 0.3 * em;
    }
    // What holds a ring together is its back; what holds two pulleys together, the belt between them.
    const joined = (from: number, to: number, ...levels: readonly number[]): void =>
      void levels.forEach((level) => bars.push(`M${round(from)} ${round(level)}H${round(to)}`));
    for (const { by, driver, driven } of layout.spans) {
      if (by === "mesh" || driver.stage !== stage) continue;
      const [near, far] = [sides(driver, sheet)[0]![1], sides(driven, sheet)[0]![0]];
      joined(near, far, y - thick / 2, y + thick / 2);
    }
    for (const wheel of own) {
      const x = round(sheet.x(wheel.x));
      const [one, other] = sides(wheel, sheet);
      if (other) joined(one![1], other[0], y + thick / 2);
      reach(x, y - thick, y + thick);
      if (x === arriving) reach(x, before, y);
      for (const [from, to] of sides(wheel, sheet)) {
        bars.push(`M${round(from)} ${round(y - thick / 2)}H${round(to)}v${round(thick)}H${round(from)}z`);
        // Gears seen from the side: lines along their teeth.
        const step = Math.max(2.5, (to - from) / 40);
        for (let at = from + step; at < to - 1; at += step)
          hatches.push(`M${round(at)} ${round(y - thick / 2)}v${round(thick)}`);
      }
    }
    before = y;
  }
  const lastX = round(sheet.x(last.x));
  y += 0.3 * em;
  reach(lastX, before, y + 0.35 * em);
  y += 0.2 * em;
  end(words.to, lastX);
  const lines = [...shafts].map(([x, [from, to]]) => `M${x} ${round(from)}V${round(to)}`);
  return {
    height: y - top + 0.4 * em,
    picture: svg`<path class="axis" d=${lines.join("")} /><path class="bar" d=${bars.join("")} /><path class="shade" d=${hatches.join("")} />${texts}`,
  };
}
