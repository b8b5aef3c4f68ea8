import { html, nothing, type TemplateResult } from "lit/html.js";
import { sayOrder, type SaidOrder } from "@meshwright/calc/article";
import type { Part } from "@meshwright/calc/drivetrain";
import { announce, block } from "../../shared/drawn/index.js";
import { css, properties } from "../../shared/element/index.js";
import { copyText } from "../../shared/page/index.js";
import { sayLengths, scrolling, tables, ToolElement, unitControl } from "../../shared/tools/index.js";

/**
 * What this version of the build means to get, beside another one: to buy in whole packs, owned already, stays, left over.
 * Nothing is invented where a price is missing.
 *
 * @attr from - `article` (default), an alternative's id, or `nothing`: what the build is counted from
 * @attr at - `article` or an alternative's id: what is to be had; the reader's version where not said
 * @csspart root - all that it draws
 * @csspart table - the parts to buy
 * @csspart rest - what is owned, stays or is left over
 */
export class MwOrderList extends ToolElement {
  static override readonly tag = "mw-order-list";
  static override styles = [
    properties,
    block,
    tables,
    css`
      .sum {
        white-space: normal;
      }
    `,
  ];
  static override properties = { from: {}, at: {}, said: { state: true } };

  declare from: string | null;
  declare at: string | null;
  declare private said: string | undefined;

  #order(): SaidOrder | undefined {
    const start = this.from === "nothing" ? undefined : this.speaker(this.from ?? "article");
    return this.says((speaker) => sayOrder(speaker, start), this.at);
  }

  readonly #copy = async (): Promise<void> => {
    const order = this.#order();
    if (!order) return;
    this.said = (await copyText(order.text)) ? this.shop.copied : this.shop.notCopied;
    announce(this.renderRoot as ShadowRoot, () => this.said ?? "");
  };

  readonly #print = (): void => this.ownerDocument.defaultView?.print();

  #where({ source, available }: Part): TemplateResult {
    const gone = available === false ? html` <span class="fault">${this.reports.notToBeHad}</span>` : nothing;
    return html`${source ?? "–"}${gone}`;
  }

  #buy({ buy, heads, packed, sum, missing }: SaidOrder): TemplateResult {
    const { reports } = this;
    if (!buy.length) return html`${missing.length ? nothing : html`<p>${reports.nothingToBuy}</p>`}`;
    return scrolling(
      reports.toBuy,
      html`<table part="table">
        <caption>
          ${reports.toBuy}
        </caption>
        <thead>
          <tr>
            ${heads.map((head, n) => html`<th scope="col" class=${n === heads.length - 1 ? "words wide" : nothing}>${head}</th>`)}
          </tr>
        </thead>
        <tbody>
          ${buy.map(({ head, line: { part }, checked, texts }) => {
            const [pieces, ...more] = texts;
            const [packs, price] = packed ? more : [undefined, more[0]];
            return html`<tr>
              <th scope="row">
                ${head} ${part.maker ? html`<span class="quiet under">${part.maker}</span>` : nothing}
                <span class="narrow quiet">${this.#where(part)}</span>
              </th>
              <td>${pieces}</td>
              ${packed ? html`<td>${packs}</td>` : nothing}
              <td>${price}${checked ? html`<br /><span class="quiet">${checked}</span>` : nothing}</td>
              <td class="words wide">${this.#where(part)}</td>
            </tr>`;
          })}
          <tr class="total">
            <th scope="row" colspan=${packed ? 3 : 2}>${reports.sum}</th>
            <td class="sum">${sum}</td>
            <td class="wide"></td>
          </tr>
        </tbody>
      </table>`,
    );
  }

  protected override render(): TemplateResult {
    const order = this.#order();
    if (!order) return this.fallback(false);
    const { shop, reports } = this;
    const { misfits, missing } = order;
    const hasLengths = sayLengths([order.rest, misfits, missing], this.current!.lengths ?? "mm", this.locale);
    const rest = [...order.rest, ...(order.missing.length ? [[reports.noPart, order.missing] as const] : [])];
    return html`<div class="root" part="root">
        ${this.whose(this.at)} ${this.#buy(order)} ${order.misfits.map((line) => html`<p class="fault">${line}</p>`)}
        ${rest.map(
          ([head, lines]) => html`<p class="note" part="rest"><strong>${head}:</strong> ${lines.join("; ")}.</p>`,
        )}
        <p class="note">
          <button type="button" @click=${this.#copy}>${shop.copyList}</button>
          <button type="button" @click=${this.#print}>${shop.printPage}</button>
          ${hasLengths ? unitControl(this.store!, this.locale, (request) => this.change(request), this.at) : nothing}
          ${this.said}
        </p>
      </div>
      ${this.fallback()}`;
  }
}
