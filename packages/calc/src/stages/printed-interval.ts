import { type Bounded, bounded, MeshwrightError, rational, ratioOf } from "../exact/index.js";

/** How a printed ratio was shortened: to the nearest digit, or cut off, or nobody knows. */
export type PrintedReading = "rounded" | "truncated" | "unsure";

/** A printed ratio as a number is written: "19:1" is how boxes print 19. */
export const plainRatio = (value: string): string => value.replace(/\s?:\s?1$/, "");

/**
 * What a printed ratio can mean, as a closed interval: half a unit of its last digit either way where it was rounded, up to
 * one unit above where it was cut off, both where nobody knows. A fraction is exact.
 * @param value as printed, above zero: `"2.74"`, `"19"`, `"52/19"`
 * @throws MeshwrightError `not-a-printed-ratio`
 *
 * @example
 * import { printedInterval } from "@meshwright/calc/stages";
 * printedInterval("2.74").low.toFraction(); // => "547/200"
 * printedInterval("2.74", "truncated").high.toFraction(); // => "11/4"
 */
export function printedInterval(value: string, read: PrintedReading = "rounded"): Bounded {
  const middle = rational(/^[\d./]{1,99}$/.test(value) ? value : 0);
  if (!middle.sign)
    throw new MeshwrightError(
      "not-a-printed-ratio",
      "value",
      `Found ${JSON.stringify(value.slice(0, 40))}; expected a ratio such as "2.74".`,
    );
  if (value.includes("/")) return bounded(middle);
  const half = ratioOf(1, 2n * 10n ** BigInt(value.split(".")[1]?.length ?? 0));
  const low = read === "truncated" ? middle : middle.minus(half);
  return bounded(low, read === "rounded" ? middle.plus(half) : middle.plus(half).plus(half));
}
