import { html, type TemplateResult } from "lit/html.js";
import type { Reporter, Speaker, Unsaid } from "@meshwright/calc/article";
import type { ReportWords } from "@meshwright/calc/languages";
import { DrawnElement } from "../drawn/index.js";
import { reportWordsFor } from "../words/index.js";
import { toolWordsFor } from "./words.js";
import type { ToolWords } from "../../languages/tools/en.js";

/** A speaker that knows what tables, cards and drawings say in its language. */
export const reporting = (speaker: Speaker | undefined): Reporter | undefined =>
  speaker && { ...speaker, reports: reportWordsFor(speaker.locale) };

/** What the elements beyond the article's own are made from: two more tables of strings. */
export abstract class ToolElement extends DrawnElement {
  /** What their controls say. */
  protected get shop(): ToolWords {
    return toolWordsFor(this.locale);
  }

  /** What tables and cards say. */
  protected get reports(): ReportWords {
    return reportWordsFor(this.locale);
  }

  protected override speaker(at?: string | null): Reporter | undefined {
    return reporting(super.speaker(at));
  }

  protected override says<Said extends object>(
    make: (speaker: Reporter) => Said | Unsaid | undefined,
    at?: string | null,
  ): Said | undefined {
    return super.says(make as (speaker: Speaker) => Said | Unsaid | undefined, at);
  }
}

/**
 * A frame in which a table scrolls by itself where the page is too narrow for it, by keyboard as well.
 *
 * @param kind `kept` where paper should not part it; `paged` where a column stays in sight
 */
export const scrolling = (label: string, table: TemplateResult, kind = ""): TemplateResult =>
  html`<div class="scroll ${kind}" tabindex="0" role="group" aria-label=${label}>${table}</div>`;
