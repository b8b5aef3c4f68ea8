import { attributeFindings, notationName, passedOver } from "../document/index.js";
import type { Build } from "../drivetrain/index.js";
import { evaluate } from "../evaluate/index.js";
import { modeFault } from "../report/index.js";
import type { Finding } from "../stages/index.js";
import { driveFindings } from "./drive-findings.js";

/** A build, and what is wrong or odd about it; without one, what keeps it from being one. */
export interface HeldBuild {
  readonly build?: Build | undefined;
  readonly findings: readonly Finding[];
}

/** What an `mw-build` says besides the data that its build was read from. */
export interface Besides {
  /** Its attributes, and what a program gave it as a property. */
  readonly names: readonly string[];
  readonly hasScript: boolean;
  readonly mode: string | null | undefined;
}

/**
 * A build as its element holds it: read, and looked at with what else the element says: names that nobody knows, a mode that the
 * build has not, another source that is passed over; then what is odd about the drive as a whole. An error among what it says
 * besides keeps it from being a build.
 *
 * @param reading what was read from its data
 *
 * @example
 * const reading = buildFromAttributes({ stages: "15 to 62", rear: "12 to 35" });
 * heldBuild(reading, { names: ["stages", "rear", "mdoe"], hasScript: false, mode: null }).build; // => undefined
 */
export function heldBuild({ build, findings }: HeldBuild, { names, hasScript, mode }: Besides): HeldBuild {
  const others = names.filter((name) => !notationName(name));
  // A notation's reader has looked at the names already.
  const isNew = ({ code, at }: Finding) => !findings.some((one) => one.code === code && one.at === at);
  const fault = build && mode ? modeFault(build, mode) : undefined;
  const besides = [
    ...attributeFindings("mw-build", others).filter(isNew),
    ...(fault ? [fault] : []),
    ...passedOver(names, hasScript),
  ];
  const all = [...besides, ...findings];
  if (!build || besides.some(({ severity }) => severity === "error")) return { build: undefined, findings: all };
  return { build, findings: [...all, ...driveFindings(evaluate(build, mode || undefined))] };
}
