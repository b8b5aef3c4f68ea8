import { html, type TemplateResult } from "lit";
import { MeshwrightElement } from "../element/index.js";
import { fill } from "../words/index.js";
import { toolWordsFor } from "./words.js";
import type { ToolWords } from "../../languages/tools/en.js";

/** What the elements beyond the article's own are made from: one more table of strings. */
export abstract class ToolElement extends MeshwrightElement {
  protected get shop(): ToolWords {
    return toolWordsFor(this.locale);
  }

  /** What a stage or an output is called. */
  protected placeName(id: string, at?: string | null): string {
    const evaluation = this.evaluation(at)!;
    const stage = evaluation.outputs.flatMap(({ steps }) => steps).find((step) => step.stage.id === id)?.stage;
    return stage?.label ?? evaluation.output(id)?.label ?? id;
  }

  /** Pairs that their mount has no place for, or nobody can tell: one sentence each. */
  protected misfits(at?: string | null): string[] {
    return (this.evaluation(at)!.build.mounts ?? []).flatMap(({ stage }) => {
      const fit = this.textOf({ figure: "fit", of: stage }, at);
      const isFine = !fit || fit === this.words.figures.fits;
      return isFine ? [] : `${fill(this.shop.fit, this.placeName(stage, at))}: ${fit}.`;
    });
  }
}

/**
 * A frame in which a table scrolls by itself where the page is too narrow for it, by keyboard as well.
 *
 * @param kind `kept` where paper should not part it; `paged` where a column stays in sight
 */
export const scrolling = (label: string, table: TemplateResult, kind = ""): TemplateResult =>
  html`<div class="scroll ${kind}" tabindex="0" role="group" aria-label=${label}>${table}</div>`;
