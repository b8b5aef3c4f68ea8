import type { Build, Motor } from "../drivetrain/index.js";
import type { Numeric } from "../gears/index.js";
import { findingOf, type Finding, type FindingCode, type FindingValues } from "../stages/index.js";
import { packVolts } from "./battery.js";
import { freeSpeed } from "./speed.js";

/**
 * What full charge does to the limits that a build states: volts against the controller's and the motors' highest, and kV
 * times full volts against the motors' highest speed. All are warnings; silence does not say that a set-up is safe.
 *
 * @example
 * const findings = electricalFindings({ battery: { cells: 2, chemistry: "lipo" }, controller: { maxVolts: "7.2" }, outputs: [] });
 * findings.map((one) => one.message); // => ["2 full cells reach 8.40 V, not 7.4. Controller limit: 7.2 V."]
 */
export function electricalFindings({
  motor,
  battery = {},
  controller,
  outputs,
}: Pick<Build, "motor" | "battery" | "controller" | "outputs">): Finding[] {
  const findings: Finding[] = [];
  const warn = (code: FindingCode, at: string, values: FindingValues): void => {
    findings.push(findingOf("warning", "meaning", code, at, values));
  };
  const { cells, chemistry } = battery;
  const pack = packVolts(battery);
  if (!pack) {
    if (chemistry) warn("chemistry-not-known", "/battery", { cells: cells ?? "?", chemistry });
    return findings;
  }
  const full = pack.full.toDecimal({ minimumFractionDigits: 2 });
  const nominal = pack.nominal.toDecimal();
  const limit = (maxVolts: Numeric | undefined, code: "full-over-controller" | "full-over-motor", at: string): void => {
    if (maxVolts !== undefined && pack.full.compare(maxVolts) > 0)
      warn(code, at, { cells, full, nominal, limit: maxVolts });
  };
  limit(controller?.maxVolts, "full-over-controller", "/controller/maxVolts");
  const motors: [Motor | undefined, string][] = outputs.map((output, n) => [output.motor, `/outputs/${n}`]);
  for (const [one = {}, owner] of [[motor, ""] as const, ...motors]) {
    limit(one.maxVolts, "full-over-motor", `${owner}/motor/maxVolts`);
    const rpm = freeSpeed(one, pack.full);
    if (rpm && one.maxRpm !== undefined && rpm.compare(one.maxRpm) > 0)
      warn("over-max-rpm", `${owner}/motor/maxRpm`, { kv: one.kv, full, limit: one.maxRpm });
  }
  return findings;
}
