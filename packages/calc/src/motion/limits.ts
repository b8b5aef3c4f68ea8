import type { Build, Finding, Motor } from "../drivetrain/index.js";
import type { RationalInput } from "../exact/index.js";
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
  const warn = (code: string, pointer: string, message: string): void => {
    findings.push({ severity: "warning", about: "meaning", code, pointer, message });
  };
  const { cells, chemistry } = battery;
  const pack = packVolts(battery);
  if (!pack) {
    if (chemistry)
      warn("chemistry-not-known", "/battery", `Volts of ${cells ?? "?"} ${chemistry} cells are not known.`);
    return findings;
  }
  const volts = `${pack.full.toDecimal({ minimumFractionDigits: 2 })} V`;
  const limit = (maxVolts: RationalInput | undefined, what: string, pointer: string): void => {
    if (maxVolts !== undefined && pack.full.compare(maxVolts) > 0)
      warn(
        `full-over-${what.toLowerCase()}`,
        pointer,
        `${cells} full cells reach ${volts}, not ${pack.nominal.toDecimal()}. ${what} limit: ${maxVolts} V.`,
      );
  };
  limit(controller?.maxVolts, "Controller", "/controller/maxVolts");
  const motors: [Motor | undefined, string][] = outputs.map((output, n) => [output.motor, `/outputs/${n}`]);
  for (const [one = {}, owner] of [[motor, ""] as const, ...motors]) {
    limit(one.maxVolts, "Motor", `${owner}/motor/maxVolts`);
    const rpm = freeSpeed(one, pack.full);
    if (rpm && one.maxRpm !== undefined && rpm.compare(one.maxRpm) > 0)
      warn("over-max-rpm", `${owner}/motor/maxRpm`, `${one.kv} kV at ${volts} is above ${one.maxRpm} a minute.`);
  }
  return findings;
}
