import { html, type TemplateResult } from "lit";
import { MeshwrightElement } from "../base/index.js";
import { workshopWordsFor } from "./words.js";
import type { WorkshopWords } from "./en.js";

/** What the elements beyond the article's own are made from: one more table of strings. */
export abstract class WorkshopElement extends MeshwrightElement {
  protected get shop(): WorkshopWords {
    return workshopWordsFor(this.locale);
  }

  /** What a stage or an output is called. */
  protected placeName(id: string, at?: string | null): string {
    const evaluation = this.evaluation(at)!;
    const stage = evaluation.outputs.flatMap(({ steps }) => steps).find((step) => step.stage.id === id)?.stage;
    return stage?.label ?? evaluation.output(id)?.label ?? id;
  }
}

/**
 * A frame in which a table scrolls by itself where the page is too narrow for it, by keyboard as well.
 *
 * @param kind `kept` where paper should not part it; `paged` where a column stays in sight
 */
export const scrolling = (label: string, table: TemplateResult, kind = ""): TemplateResult =>
  html`<div class="scroll ${kind}" tabindex="0" role="group" aria-label=${label}>${table}</div>`;
