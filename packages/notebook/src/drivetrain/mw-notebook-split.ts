import { html, nothing, type TemplateResult } from "lit";
import { NotebookPanel, sheet } from "../frame/index.js";

/** Where the drive splits among the axles: locked, or open with shares. */
export class MwNotebookSplit extends NotebookPanel {
  static readonly tag = "mw-notebook-split";
  static override styles = [sheet];

  protected override render(): TemplateResult | typeof nothing {
    const { build } = this;
    if (!build) return nothing;
    const centre = build.centre;
    const isOpen = centre?.kind === "differential";
    const fed = build.outputs.filter(({ from, motor }) => !from && !motor);
    const share = (event: Event): void => {
      const input = event.target as HTMLInputElement;
      const given = { ...centre?.share, [input.name]: input.value.trim().replace(",", ".") };
      this.ask("share", { centre: { kind: "differential", share: given } }, "Shares of the centre differential");
    };
    return html`<h2 tabindex="-1">Where the drive splits</h2>
      <p>
        The axles are
        ${this.choice(
          "centre.kind",
          "How the axles are joined",
          [
            ["spool", "locked together: every axle turns alike"],
            ["differential", "joined by a differential: each may turn as it likes"],
          ],
          (value) => ({ centre: { kind: value ?? "spool" } }),
        )}.
      </p>
      ${
        isOpen
          ? html`<p>
              Of the torque go to
              ${fed.map(({ id, label }, n) => html`${n ? ", " : ""}${label ?? id} <input class="count" name=${id} aria-label=${`Share of ${label ?? id}`} placeholder="even" .value=${String(centre.share?.[id] ?? "")} @change=${share} />`)}
              parts.
            </p>`
          : nothing
      }
      ${this.fault("share")}
      <p>
        Compare
        ${this.choice(
          "compare.of",
          "Which axle",
          build.outputs.map(({ id, label }) => [id, label ?? id] as const),
          (value) => ({ compare: { with: build.outputs.at(-1)!.id, ...build.compare, of: value } }),
        )}
        with
        ${this.choice(
          "compare.with",
          "With which axle",
          build.outputs.map(({ id, label }) => [id, label ?? id] as const),
          (value) => ({ compare: { of: build.outputs[0]!.id, ...build.compare, with: value } }),
        )}.
        The wheelbase is ${this.field("wheelbase", { label: "Wheelbase", takes: "text", size: "short" })}.
      </p>
      ${this.fault("compare.of")}${this.fault("compare.with")}
      ${build.compare ? html`<mw-overdrive-gauge></mw-overdrive-gauge>` : nothing}`;
  }
}
