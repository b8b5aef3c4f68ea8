import { css, html, nothing, type TemplateResult } from "lit";
import { needsOf, orderOf, type BuyLine, type Need, type OrderLine, type OrderList } from "@meshwright/calc/parts";
import type { Part } from "@meshwright/calc/drivetrain";
import { announce, block, properties } from "../../shared/element/index.js";
import { copyText } from "../../shared/page/index.js";
import { fill } from "../../shared/words/index.js";
import {
  dateText,
  moneyText,
  needText,
  partName,
  partsOf,
  scrolling,
  sumText,
  tables,
  ToolElement,
} from "../../shared/tools/index.js";

const isPacked = ({ pack = 1 }: Part): boolean => pack > 1;

/**
 * What this version of the build means to get, beside another one: to buy in whole packs, owned already, stays, left over.
 * Nothing is invented where a price is missing.
 *
 * @attr from `article` (default), an alternative's id, or `nothing`: what the build is counted from
 * @attr at `article` or an alternative's id: what is to be had; the reader's version where not said
 * @csspart table the parts to buy · @csspart rest what is owned, stays or is left over
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

  #order(): OrderList | undefined {
    const build = this.evaluation(this.at)?.build;
    const parts = partsOf(build);
    const start = this.from === "nothing" ? undefined : this.evaluation(this.from ?? "article")?.build;
    return build && orderOf(start ? needsOf(start, parts) : [], needsOf(build, parts));
  }

  #missing(need: Need): string {
    const what = needText(need, this.words, this.shop, this.locale);
    return `${this.placeName(need.stage, this.at)}: ${need.pieces > 1 ? `${need.pieces} × ` : ""}${what}`;
  }

  #lines(order: OrderList): string[] {
    const { shop } = this;
    const part = ({ part: one, pieces }: OrderLine) =>
      `${pieces} × ${partName(one)}${one.maker ? `, ${one.maker}` : ""}`;
    const section = (head: string, lines: readonly string[]) => (lines.length ? ["", head, ...lines] : []);
    return [
      this.evaluation(this.at)!.build.title ?? "",
      ...section(
        shop.toBuy,
        order.buy.map(
          (line) =>
            `${part(line)}: ${isPacked(line.part) ? `${this.#packs(line)}, ` : ""}${this.#cost(line)}${line.part.source ? `, ${line.part.source}` : ""}`,
        ),
      ),
      ...section(shop.sum, order.buy.length ? [sumText(order, shop, this.locale, order.missing.length)] : []),
      ...this.misfits(this.at),
      ...section(shop.ownedAlready, order.owned.map(part)),
      ...section(shop.stays, order.stays.map(part)),
      ...section(shop.leftOver, order.left.map(part)),
      ...section(
        shop.noPart,
        order.missing.map((need) => this.#missing(need)),
      ),
    ];
  }

  #packs({ packs, part }: BuyLine): string {
    return isPacked(part) ? fill(this.shop.packs, packs, part.pack!) : `${packs}`;
  }

  #cost({ cost }: BuyLine): string {
    return cost ? moneyText(cost.amount, cost.currency, this.locale) : this.shop.noPrice;
  }

  readonly #copy = async (): Promise<void> => {
    const order = this.#order();
    if (!order) return;
    this.said = (await copyText(this.#lines(order).join("\n").trim())) ? this.shop.copied : this.shop.notCopied;
    announce(this.renderRoot as ShadowRoot, () => this.said ?? "");
  };

  readonly #print = (): void => this.ownerDocument.defaultView?.print();

  #where({ source, available }: Part): TemplateResult {
    const { shop } = this;
    return html`${source ?? "–"}${available === false ? html` <span class="fault">${shop.notToBeHad}</span>` : nothing}`;
  }

  #buy(order: OrderList): TemplateResult {
    const { shop, locale } = this;
    // What no part is named for is to be had as well.
    if (!order.buy.length) return html`${order.missing.length ? nothing : html`<p>${shop.nothingToBuy}</p>`}`;
    const packed = order.buy.some(({ part }) => isPacked(part));
    return scrolling(
      shop.toBuy,
      html`<table part="table">
        <caption>
          ${shop.toBuy}
        </caption>
        <thead>
          <tr>
            <th scope="col">${shop.part}</th>
            <th scope="col">${shop.pieces}</th>
            ${packed ? html`<th scope="col">${shop.packsHead}</th>` : nothing}
            <th scope="col">${shop.price}</th>
            <th scope="col" class="words wide">${shop.where}</th>
          </tr>
        </thead>
        <tbody>
          ${order.buy.map(
            (line) =>
              html`<tr>
                <th scope="row">
                  ${partName(line.part)}
                  ${line.part.maker ? html`<span class="quiet under">${line.part.maker}</span>` : nothing}
                  <span class="narrow quiet">${this.#where(line.part)}</span>
                </th>
                <td>${line.pieces}</td>
                ${packed ? html`<td>${this.#packs(line)}</td>` : nothing}
                <td>
                  ${this.#cost(line)}${
                    line.part.price?.checked
                      ? html`<br /><span class="quiet">${dateText(line.part.price.checked, locale)}</span>`
                      : nothing
                  }
                </td>
                <td class="words wide">${this.#where(line.part)}</td>
              </tr>`,
          )}
          <tr class="total">
            <th scope="row" colspan=${packed ? 3 : 2}>${shop.sum}</th>
            <td class="sum">${sumText(order, shop, locale, order.missing.length)}</td>
            <td class="wide"></td>
          </tr>
        </tbody>
      </table>`,
    );
  }

  #rest(head: string, lines: readonly OrderLine[]): TemplateResult | typeof nothing {
    if (!lines.length) return nothing;
    const all = lines.map(({ part, pieces }) => (pieces > 1 ? `${pieces} × ${partName(part)}` : partName(part)));
    return html`<p class="note" part="rest"><strong>${head}:</strong> ${all.join("; ")}.</p>`;
  }

  protected override render(): TemplateResult {
    const order = this.#order();
    if (!order) return this.fallback(false);
    const { shop } = this;
    return html`<div class="root" part="root">
        ${this.#buy(order)} ${this.misfits(this.at).map((line) => html`<p class="fault">${line}</p>`)}
        ${this.#rest(shop.ownedAlready, order.owned)} ${this.#rest(shop.stays, order.stays)}
        ${this.#rest(shop.leftOver, order.left)}
        ${
          order.missing.length
            ? html`<p class="note">
                <strong>${shop.noPart}:</strong> ${order.missing.map((need) => this.#missing(need)).join("; ")}.
              </p>`
            : nothing
        }
        <p class="note">
          <button type="button" @click=${this.#copy}>${shop.copyList}</button>
          <button type="button" @click=${this.#print}>${shop.printPage}</button> ${this.said}
        </p>
      </div>
      ${this.fallback()}`;
  }
}
