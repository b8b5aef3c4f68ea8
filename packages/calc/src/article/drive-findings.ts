import type { Evaluation } from "../evaluate/index.js";
import { electricalFindings } from "../motion/index.js";
import { fittedFindings } from "../parts/index.js";
import type { Finding } from "../stages/index.js";

/**
 * What is odd about a drive as a whole, though all that its build says can be read: axles that turn against each other, an axle that
 * nothing settles, a full pack above what controller or motor bears, a part that is fitted and is another. For whoever writes the article.
 *
 * @example
 * const stages = [{ id: "spur", kind: "pair", driver: 15, driven: 62 } as const];
 * const battery = { cells: 3, chemistry: "lipo" } as const;
 * const outputs = [{ id: "rear", stages: [] }];
 * const build = parseBuild({ format: "meshwright-build/1", stages, outputs, battery, controller: { maxVolts: "12" } });
 * driveFindings(evaluate(build)).map(({ code }) => code); // => ["full-over-controller"]
 */
export const driveFindings = ({ build, findings }: Evaluation): readonly Finding[] => [
  ...findings,
  ...electricalFindings(build),
  ...fittedFindings(build),
];
