import { css, html, nothing, type TemplateResult } from "lit";
import { needsOf, orderOf } from "@meshwright/calc/parts";
import type { FigureQuery } from "@meshwright/calc/report";
import { block, paperOf, properties } from "../../shared/element/index.js";
import { fill } from "../../shared/words/index.js";
import { partsOf, scrolling, sumText, tables, ToolElement } from "../../shared/tools/index.js";

/** One version of the build: a column. */
interface Version {
  readonly at: string;
  readonly label: string;
}

const measures = [
  ["reduction", "reduction"],
  ["wheel-speed", "wheelSpeed"],
  ["wheel-torque", "wheelTorque"],
  ["midpoint", "midpoint"],
] as const;

/**
 * The build as published, as the reader has it, and its alternatives, side by side: totals, front against rear, speed, fit,
 * what there is to buy for it, and what each changes against the published one: four differences with four names.
 *
 * @attr show ids of the alternatives to show, with blanks between; all where not said
 * @csspart table the table
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
        min-width: 9em;
      }
      thead th {
        vertical-align: bottom;
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
      tbody tr > :nth-child(3) {
        font-weight: 600;
      }
    `,
  ];
  static override properties = { show: {} };

  declare show: string | null;

  protected override updated(changed: Map<PropertyKey, unknown>): void {
    super.updated(changed);
    // The first column stays where it is while the others go under it.
    this.renderRoot.querySelector<HTMLElement>(".paged")?.style.setProperty("--_page", paperOf(this));
  }

  get #versions(): readonly Version[] {
    const { shop, store } = this;
    const wanted = this.show?.split(/\s+/);
    const alternatives = (store?.article?.alternatives ?? [])
      .filter(({ id }) => (!wanted || wanted.includes(id)) && this.evaluation(id))
      .map(({ id, label }) => ({ at: id, label: label ?? id }));
    return [{ at: "article", label: shop.published }, { at: "", label: shop.yours }, ...alternatives];
  }

  /** A row of one figure, with a verdict word under it where there is one. */
  #row(head: string, query: FigureQuery, word?: FigureQuery): TemplateResult {
    return html`<tr>
      <th scope="row">${head}</th>
      ${this.#versions.map(
        ({ at }) =>
          html`<td>
            ${this.textOf(query, at)}${word ? html` <span class="word">${this.textOf(word, at)}</span>` : nothing}
          </td>`,
      )}
    </tr>`;
  }

  /** What the parts that a version needs, and the published one has not, cost: to buy, owned already, or none at all. */
  #cost(at: string): string {
    const { shop, locale } = this;
    const parts = partsOf(this.store!.article);
    const needs = (version: string) => needsOf(this.evaluation(version)!.build, parts);
    const order = orderOf(needs("article"), needs(at));
    const { buy, owned, missing } = order;
    if (buy.length || missing.length) return sumText(order, shop, locale, missing.length);
    return owned.length ? shop.ownedAlready : "–";
  }

  #group(head: string, columns: number): TemplateResult {
    return html`<tr class="group">
      <th scope="colgroup" colspan=${columns}>${head}</th>
    </tr>`;
  }

  protected override render(): TemplateResult {
    const evaluation = this.evaluation();
    if (!evaluation) return this.fallback(false);
    const { shop, words } = this;
    const { build, outputs } = evaluation;
    const versions = this.#versions;
    const pair = evaluation.compare();
    const scope = pair?.of.output.wheel && pair.with.output.wheel ? "tyres" : "gears";
    const speeds = build.battery && (build.motor ?? outputs.some(({ output }) => output.motor));
    return html`<div class="root" part="root">
        ${scrolling(
          versions.map(({ label }) => label).join(", "),
          html`<table part="table">
            <thead>
              <tr>
                <th scope="col">${words.total}</th>
                ${versions.map(({ label }) => html`<th scope="col">${label}</th>`)}
              </tr>
            </thead>
            <tbody>
              ${outputs.map(({ id, label }) =>
                this.#row(
                  label,
                  { figure: "reduction", of: id },
                  build.target ? { figure: "standing", of: id } : undefined,
                ),
              )}
              ${
                pair
                  ? this.#row(
                      fill(
                        shop.against,
                        pair.of.label,
                        pair.with.label,
                        scope === "tyres" ? words.tyres : words.onlyGears,
                      ),
                      {
                        figure: "lead",
                        scope,
                      },
                    )
                  : nothing
              }
              ${speeds ? outputs.map(({ id, label }) => this.#row(fill(shop.speed, label), { figure: "speed", of: id })) : nothing}
              ${(build.mounts ?? []).map(({ stage }) =>
                this.#row(
                  fill(shop.fit, this.placeName(stage)),
                  { figure: "centre", of: stage },
                  { figure: "fit", of: stage },
                ),
              )}
              ${
                build.parts?.length
                  ? html`<tr>
                      <th scope="row">${shop.cost}</th>
                      ${versions.map(({ at }) => html`<td class="cost">${this.#cost(at)}</td>`)}
                    </tr>`
                  : nothing
              }
              ${outputs.map(
                ({ id, label }) =>
                  html`${this.#group(fill(shop.changedBy, label), versions.length + 1)}
                  ${measures.map(([measure, name]) => this.#row(shop[name], { figure: "change", of: id, measure }))}`,
              )}
            </tbody>
          </table>`,
          "paged",
        )}
        <p class="note">${shop.fourNames}${speeds ? html` ${shop.ideal} ${shop.cautions[0]}` : nothing}</p>
      </div>
      ${this.fallback()}`;
  }
}
