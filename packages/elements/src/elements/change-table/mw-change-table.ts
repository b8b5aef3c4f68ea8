import { html, nothing, type TemplateResult } from "lit/html.js";
import { sayChanges, type Against, type ChangeRow, type Column } from "@meshwright/calc/article";
import { css, paperOf, properties } from "../../shared/element/index.js";
import { block, speakerFor } from "../../shared/drawn/index.js";
import { reporting, scrolling, tables, ToolElement, unitControl } from "../../shared/tools/index.js";

/**
 * The build as published, as the reader has it, and its alternatives, side by side: totals, front against rear, speed, fit,
 * what there is to buy for it, and what each changes against the published one: several differences, each with a name.
 *
 * @attr against - what all are held against instead of the published build, group by group too: the id of a reference, of an
 *   alternative, `revision-1`, or the id of another `mw-build` on the page, as that stands
 * @attr show - ids of the alternatives to show, with blanks between; all where not said
 * @csspart root - all that it draws
 * @csspart table - the table
 */
export class MwChangeTable extends ToolElement {
  static override readonly tag = "mw-change-table";
  static override styles = [
    properties,
    block,
    tables,
    css`
      th:first-child {
        position: sticky;
        inset-inline-start: 0;
        background: var(--_paper);
      }
      table:not(.list) th:first-child {
        min-width: 9em;
      }
      thead th {
        vertical-align: bottom;
      }
      table:not(.list) thead th {
        min-width: 5.5em;
      }
      .group th {
        color: var(--_second);
        padding-top: 0.9em;
        white-space: normal;
        text-align: start;
      }
      .cost {
        white-space: normal;
      }
      @media print {
        th:first-child {
          position: static;
          background: none;
        }
      }
      .word {
        display: block;
        color: var(--_second);
        font-size: 0.86em;
      }
      .yours {
        font-weight: 600;
      }
    `,
  ];
  static override properties = { show: {}, against: {} };

  declare show: string | null;
  declare against: string | null;

  protected override updated(changed: Map<PropertyKey, unknown>): void {
    super.updated(changed);
    // The first column stays where it is while the others go under it.
    this.renderRoot.querySelector<HTMLElement>(".paged")?.style.setProperty("--_page", paperOf(this));
  }

  /** The versions side by side: the author's, the reader's, and the alternatives that are to be shown. */
  #columns(): readonly Column[] {
    const { reports, store } = this;
    const wanted = this.show?.split(/\s+/);
    const alternatives = (store?.article?.alternatives ?? [])
      .filter(({ id }) => !wanted || wanted.includes(id))
      .map(({ id, label }) => [id, label ?? id] as const);
    // Who reads what they write themselves has published nothing.
    const published = this.holder?.isOwn ? [] : [["article", reports.published] as const];
    return [...published, ["", reports.yours] as const, ...alternatives].flatMap(([at, label]) => {
      const speaker = this.evaluation(at) && this.speaker(at);
      return speaker ? { label, speaker } : [];
    });
  }

  /** What all are held against, where that is not the published build; null where there is no such version. */
  #against(): Against | undefined | null {
    const { against: id, store } = this;
    if (!id || id === "article" || !store?.build) return undefined;
    const evaluation = store.against(id);
    if (!evaluation) return null;
    const { references = [], alternatives = [] } = store.article!;
    const listed = [...references, ...alternatives].find((one) => one.id === id);
    const label = listed ? (listed.label ?? id) : this.evaluation(id) ? id : (evaluation.build.title ?? id);
    return { label, speaker: reporting(speakerFor(evaluation, this.locale, store))! };
  }

  #row({ head, texts, words, cost }: ChangeRow, yours: number): TemplateResult {
    return html`<tr>
      <th scope="row">${head}</th>
      ${texts.map(
        (text, n) =>
          html`<td class=${[cost ? "cost" : "", n === yours ? "yours" : ""].join(" ").trim() || nothing}>
            ${text}${words ? html` <span class="word">${words[n]}</span>` : nothing}
          </td>`,
      )}
    </tr>`;
  }

  protected override render(): TemplateResult {
    const columns = this.store?.build ? this.#columns() : [];
    const against = this.#against();
    // What there is not is told to the author, and their text stays.
    if (against === null) return this.fallback(false);
    const shown = against ? [against, ...columns] : columns;
    const base = against ?? (this.holder?.isOwn ? columns[0] : undefined);
    const said = this.says((speaker) => sayChanges(speaker, columns[0]!.speaker, shown, base));
    if (!said) return this.fallback(false);
    const yours = shown.findIndex(({ label }) => label === this.reports.yours);
    return html`<div class="root" part="root">
        ${this.whose()}
        ${scrolling(
          shown.map(({ label }) => label).join(", "),
          html`<table part="table">
            <thead>
              <tr>
                ${said.heads.map((head) => html`<th scope="col">${head}</th>`)}
              </tr>
            </thead>
            <tbody>
              ${said.groups.map(
                ({ head, rows }) =>
                  html`${
                    head
                      ? html`<tr class="group">
                          <th scope="colgroup" colspan=${said.heads.length}>${head}</th>
                        </tr>`
                      : nothing
                  }
                  ${rows.map((row) => this.#row(row, yours))}`,
              )}
            </tbody>
          </table>`,
          "paged",
        )}
        <p class="note">
          ${said.notes.join(" ")}
          ${this.current!.mounts?.length ? unitControl(this.store!, this.locale, (request) => this.change(request)) : nothing}
        </p>
      </div>
      ${this.fallback()}`;
  }
}
