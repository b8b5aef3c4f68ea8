import { html, type TemplateResult } from "lit";
import { NotebookPage, sheet } from "../frame/index.js";

/** What the drivetrain needs and has not, and what was noted beside it. */
export class MwNotebookBuy extends NotebookPage {
  static readonly tag = "mw-notebook-buy";
  static override styles = [sheet];
  static override properties = { against: { state: true } };

  /** Against what the order is reckoned: everything, or only what a version changed. */
  declare private against: string | undefined;

  protected override render(): TemplateResult {
    const { build, notebook } = this.session;
    if (!build) return html`<p class="quiet">There is nothing to buy before there is a drivetrain.</p>`;
    const note = (event: Event): void => {
      const text = (event.target as HTMLTextAreaElement).value;
      if (text !== (notebook.orders?.[""] ?? ""))
        this.session.put({ orders: { ...notebook.orders, "": text } }, "Note on the order changed");
    };
    return html`<p>
        Everything that the drivetrain needs and that does not lie on the shelf. What is owned is set against it in
        whole pieces.
      </p>
      <mw-order-list from="nothing"></mw-order-list>
      ${this.fold("Every part of it, by stage", () => html`<mw-parts-list></mw-parts-list>`)}
      <p class="quiet"><label for="ordered">Ordered where and when, and what else there is to remember:</label></p>
      <textarea
        id="ordered"
        rows="2"
        data-was=${notebook.orders?.[""] ?? ""}
        .value=${notebook.orders?.[""] ?? ""}
        @change=${note}
      ></textarea>`;
  }
}
