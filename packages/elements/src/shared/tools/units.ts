import type { ChangeSet } from "@meshwright/calc/drivetrain";
import { html, nothing, type TemplateResult } from "lit/html.js";
import { page, type BuildStore } from "../store/index.js";
import { toolWordsFor } from "./words.js";

/**
 * Turns the unit of length over, for all that shows this build: the reader's own, over what the author says. Stands where
 * lengths are shown, unless what is shown is pinned to a version. Whoever writes the build as well has one key for the
 * whole page, elsewhere.
 *
 * @param ask asks for a change on the reader's behalf
 */
export function unitControl(
  store: BuildStore,
  locale: string,
  ask: (request: ChangeSet) => unknown,
  at?: string | null,
): TemplateResult | typeof nothing {
  const { build, article } = store;
  const isOwn = [...page().holders].some((holder) => holder.store === store && holder.isOwn);
  if (at || isOwn || !build || !article) return nothing;
  const unit = build.lengths === "in" ? "mm" : "in";
  // Back to the author's is no change.
  const to = (article.lengths ?? "mm") === unit ? (article.lengths ?? null) : unit;
  return html`<button type="button" class="unit" @click=${() => void ask({ lengths: to })}>
    ${toolWordsFor(locale).unitOfLength[unit]}
  </button>`;
}

/** Whether any of some texts says a length in the unit that the build shows lengths in. */
export function sayLengths(said: unknown, unit: string, locale: string): boolean {
  const [number, word] = ["decimal", "unit"].map((style) =>
    new Intl.NumberFormat(locale, {
      style,
      unit: unit === "in" ? "inch" : "millimeter",
    } as Intl.NumberFormatOptions).format(5),
  ) as [string, string];
  const name = word.replace(number, "").trim();
  return new RegExp(`\\p{Nd}\\s*${name.replace(/[^\p{L}]/gu, ".")}(?!\\p{L})`, "u").test(JSON.stringify(said));
}
