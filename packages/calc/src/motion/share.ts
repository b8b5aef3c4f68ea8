import { bounded, MeshwrightError, type Bounded } from "../exact/index.js";

/** A share of what goes in: above 0 and up to 1. */
export function shareOf(value: Parameters<typeof bounded>[0], at: string): Bounded {
  const share = bounded(value);
  if (share.low.sign <= 0 || share.high.compare(1) > 0)
    throw new MeshwrightError("out-of-range", at, "Found a share outside of what is expected: above 0 and up to 1.");
  return share;
}
