import { type Bounded, bounded } from "./bounded.js";
import { MeshwrightError } from "./errors.js";
import { rational, ratioOf } from "./rational.js";

/** How a printed ratio was shortened: to the nearest digit, cut off, or nobody knows. */
export type PrintedReading = "rounded" | "truncated" | "unsure";

/** What a printed ratio can mean, as a closed interval. Fractions are exact. */
export function printedInterval(value: string, read: PrintedReading = "rounded"): Bounded {
  if (typeof value !== "string" || !/^\d+(\.\d+|\/\d+)?$/.test(value))
    throw new MeshwrightError(
      "not-a-printed-ratio",
      "value",
      `Found ${JSON.stringify(value)}; expected text as printed, such as "2.74" or "52/19".`,
    );
  const middle = rational(value);
  if (value.includes("/")) return bounded(middle);
  const [, fraction = ""] = value.split(".");
  const half = ratioOf(1, 2n * 10n ** BigInt(fraction.length));
  return bounded(
    read === "truncated" ? middle : middle.minus(half),
    read === "rounded" ? middle.plus(half) : middle.plus(half).plus(half),
  );
}
