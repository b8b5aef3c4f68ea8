import { html, type TemplateResult } from "lit";
import { chemistryNames } from "@meshwright/calc/drivetrain";
import { NotebookPanel, sheet } from "../frame/index.js";

/** The motor: what its label says, the pack, the controller, and what that comes to at the wheels. */
export class MwNotebookMotor extends NotebookPanel {
  static readonly tag = "mw-notebook-motor";
  static override styles = [sheet];

  /** A field of something that may not be there yet. */
  #of(thing: "motor" | "battery" | "controller", field: string, label: string, takes: "count" | "number" | "text") {
    const whole = (value: unknown): Record<string, unknown> => {
      const rest = { ...(this.build?.[thing] as object | undefined), [field]: value } as Record<string, unknown>;
      if (value === null) delete rest[field];
      return { [thing]: Object.keys(rest).length ? rest : null };
    };
    return this.field(`${thing}.${field}`, {
      label,
      takes,
      change: whole,
      ...(takes === "text" && { size: "short" as const }),
    });
  }

  protected override render(): TemplateResult {
    return html`<h2 tabindex="-1">Motor</h2>
      <p>
        It makes ${this.#of("motor", "kv", "Turns a minute for each volt", "number")} turns a minute for each volt (kV)
        and bears ${this.#of("motor", "maxRpm", "Most turns a minute", "number")} turns a minute and
        ${this.#of("motor", "maxVolts", "Most volts of the motor", "number")} volts.
      </p>
      <p>
        The pack has ${this.#of("battery", "cells", "Cells one after the other", "count")} cells one after the other,
        ${this.choice(
          "battery.chemistry",
          "What the cells are made of",
          [["", "of what is not said"], ...chemistryNames.map((one) => [one, one] as const)],
          (value) => ({
            battery: { ...this.build?.battery, ...(value ? { chemistry: value } : { chemistry: undefined }) },
          }),
        )}.
        The controller bears ${this.#of("controller", "maxVolts", "Most volts of the controller", "number")} volts.
      </p>
      ${this.fault("battery.chemistry")}
      <mw-wheel-speed></mw-wheel-speed>
      <p class="quiet">
        Speeds are ideal: full charge, no load, no losses. First test with the wheels off the ground. Makers’
        instructions and local rules come first.
      </p>`;
  }
}
