import { type Bounded, bounded } from "./bounded.js";
import { fail } from "./errors.js";
import { rational } from "./rational.js";

/** How a printed ratio was shortened: to the nearest digit, or cut off, or nobody knows. */
export type PrintedReading = "rounded" | "truncated" | "unsure";

/**
 * What a printed ratio can mean, as a closed interval: half a unit of its last digit either way where it was rounded, up to
 * one unit above where it was cut off, both where nobody knows. A fraction is exact.
 * @param value as printed, above zero: `"2.74"`, `"19"`, `"52/19"`; also `"2.74:1"`
 * @throws MeshwrightError `not-a-printed-ratio`
 *
 * @example
 * import { printedInterval } from "@meshwright/calc/exact";
 * printedInterval("2.74").low.toFraction(); // => "547/200"
 * printedInterval("2.74", "truncated").high.toFraction(); // => "11/4"
 */
export function printedInterval(value: string, read: PrintedReading = "rounded"): Bounded {
  const [, whole, fraction = "", divisor] = /^(\d{1,99})(?:\.(\d{1,99})|\/(\d{1,99}))?(?::1)?$/.exec(value) ?? [];
  const middle = rational(whole === undefined || divisor === "0" ? 0 : value.replace(":1", ""));
  if (!middle.sign) fail("not-a-printed-ratio", "value", value, 'a ratio as printed, such as "2.74" or "52/19"');
  if (divisor) return bounded(middle);
  const half = rational("0.5").over(10n ** BigInt(fraction.length));
  return bounded(
    read === "truncated" ? middle : middle.minus(half),
    middle.plus(read === "rounded" ? half : half.plus(half)),
  );
}
