import { html, nothing, type TemplateResult } from "lit/html.js";
import { dateText, sayCard, type BlockTable } from "@meshwright/calc/article";
import { css, properties } from "../../shared/element/index.js";
import { block } from "../../shared/drawn/index.js";
import { fill } from "../../shared/words/index.js";
import { scrolling, tables, ToolElement, unitControl, whoseValues } from "../../shared/tools/index.js";

/**
 * A card for the workshop, made for paper (A5 and A4): counts, centre distances, openings, turns to check by hand, boxes to
 * tick, and room to write what was measured; with whose values they are, the date, and the cautions for a first run.
 *
 * @attr at - `article` or an alternative's id
 * @csspart root - all that it draws
 * @csspart card - the card
 */
export class MwBenchCard extends ToolElement {
  static override readonly tag = "mw-bench-card";
  static override styles = [
    properties,
    block,
    tables,
    css`
      .card {
        break-inside: avoid;
      }
      h3 {
        font-size: 1.1em;
        font-weight: 600;
        margin: 0 0 0.2em;
      }
      h4 {
        font-size: 1em;
        font-weight: 600;
        margin: 1em 0 0.2em;
      }
      .whose {
        color: var(--_second);
        margin: 0 0 0.6em;
      }
      table:not(.list) th:first-child {
        width: 100%;
        min-width: 8em;
      }
      tbody th:first-child {
        padding-inline-start: 1.4em;
        text-indent: -1.4em;
      }
      @media screen and (max-width: 480px) {
        td,
        td:not(.measured),
        thead th:nth-child(2) {
          white-space: normal;
          padding-inline: 0.4em;
        }
        .measured {
          min-width: 4em;
        }
      }
      .scroll + .scroll {
        margin-top: 0.8em;
      }
      thead th:not(:first-child) {
        white-space: nowrap;
      }
      td:not(.measured) {
        padding-inline-end: 0.8em;
      }
      thead th:nth-child(2) {
        padding-inline-end: 0.8em;
      }
      .measured {
        min-width: 4.6em;
        border-inline-start: 1px solid var(--_line);
      }
      .box {
        display: inline-block;
        width: 0.8em;
        height: 0.8em;
        border: 1px solid currentColor;
        margin-inline-end: 0.6em;
        vertical-align: -0.05em;
      }
      ul.boxes {
        list-style: none;
        padding: 0;
        margin: 0.4em 0;
      }
      ul.boxes li {
        display: flex;
        align-items: baseline;
        margin: 0.3em 0;
        min-width: 0;
        overflow-wrap: anywhere;
      }
      ul.boxes .box {
        flex: none;
      }
      .fault {
        margin: 0.4em 0;
      }
      .lines {
        border-bottom: 1px solid var(--_line);
        height: 2.2em;
      }
      @media print {
        .card {
          font-size: 8pt;
          line-height: 1.24;
          color: #000;
          background: #fff;
        }
        th,
        td {
          padding-block: 0.08em;
        }
        .measured {
          min-width: 8em;
        }
        h4 {
          margin-top: 0.5em;
        }
        ul.boxes li {
          margin: 0.1em 0;
        }
        .fault,
        .note,
        .whose,
        ul.boxes {
          margin-block: 0.25em;
        }
        .scroll + .scroll {
          margin-top: 0.4em;
        }
        .lines {
          height: 1.6em;
        }
      }
      /* A5 holds all of it; a larger sheet may be read from farther off. */
      @media print and (min-width: 160mm) {
        .card {
          font-size: 10pt;
        }
        th,
        td {
          padding-block: 0.4em;
        }
      }
    `,
  ];
  static override properties = { at: {} };

  declare at: string | null;

  #table({ heads, rows }: BlockTable): TemplateResult | typeof nothing {
    if (!rows.length) return nothing;
    const [head, should, measured] = heads;
    return scrolling(
      head!,
      html`<table>
        <thead>
          <tr>
            <th scope="col">${head}</th>
            <th scope="col">${should}</th>
            <th scope="col" class="measured">${measured}</th>
          </tr>
        </thead>
        <tbody>
          ${rows.map(
            ({ head: name, texts }) =>
              html`<tr>
                <th scope="row"><span class="box" aria-hidden="true"></span>${name}</th>
                <td>${texts[0]}</td>
                <td class="measured"></td>
              </tr>`,
          )}
        </tbody>
      </table>`,
    );
  }

  protected override render(): TemplateResult {
    const said = this.says(sayCard, this.at);
    if (!said) return this.fallback(false);
    const { reports } = this;
    const today = dateText(new Date(), this.locale, "long");
    return html`<div class="root card" part="root card">
        <h3>${said.title}</h3>
        <p class="whose">
          ${whoseValues(this.store!, this.locale, this.holder?.isOwn, this.at)}
          ${said.published ? `${said.published}. ` : ""}${fill(reports.printed, today)}
        </p>
        ${this.#table(said.gears)} ${this.#table(said.mesh)}
        ${said.setting ? html`<p class="note">${said.setting}</p>` : nothing}
        ${[...said.misfits, ...said.warnings].map((line) => html`<p class="fault">${line}</p>`)}
        ${this.#table(said.turns)}
        ${said.counting.length ? html`<p class="note">${said.counting.join(" ")}</p>` : nothing}
        <h4>${reports.firstRun}</h4>
        <ul class="boxes">
          ${said.cautions.map((caution) => html`<li><span class="box" aria-hidden="true"></span>${caution}</li>`)}
        </ul>
        <h4>${reports.room}</h4>
        <div class="lines"></div>
        <div class="lines"></div>
        <div class="lines"></div>
        ${said.mesh.rows.length ? html`<p class="note">${unitControl(this.store!, this.locale, (request) => this.change(request), this.at)}</p>` : nothing}
      </div>
      ${this.fallback()}`;
  }
}
