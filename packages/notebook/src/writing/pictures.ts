import { linePicture, type PictureOptions } from "@meshwright/elements/drive-line";
import type { Build } from "@meshwright/calc/drivetrain";
import { reporterOf } from "./figures.js";

/** Pictures that are handed out, by what they are for. */
export const pictureSizes = {
  preview: { width: 1200, height: 630, look: "paper", say: "for previews of a link, 1200 × 630" },
  film: { width: 1920, height: 1080, look: "film", say: "for a film, 1920 × 1080, see-through" },
} as const satisfies Record<string, Pick<PictureOptions, "width" | "height" | "look"> & { readonly say: string }>;

/** A picture with its description, for whoever does not see it. */
export interface Picture {
  readonly name: keyof typeof pictureSizes;
  readonly width: number;
  readonly height: number;
  readonly svg: string;
  readonly description: string;
}

/**
 * A picture of a drivetrain: the same text for the same drivetrain, every time.
 *
 * @param before the drivetrain as it was: what is another says what it was
 * @param note a date, below
 */
export function pictureOf(
  name: keyof typeof pictureSizes,
  build: Build,
  { before, note }: { readonly before?: Build | undefined; readonly note?: string } = {},
): Picture | undefined {
  const { width, height, look } = pictureSizes[name];
  const speaker = reporterOf(build);
  if (!speaker) return undefined;
  const was = before && reporterOf(before);
  const options = { width, height, look, ...(was && { before: was }), ...(note && { note }) };
  return { name, width, height, ...linePicture(speaker, options) };
}
