import { html, type TemplateResult } from "lit";
import { NotebookPart, sheet } from "../frame/index.js";

/** The post. */
export class MwNotebookPost extends NotebookPart {
  static readonly tag = "mw-notebook-post";
  static override styles = [sheet];

  takeIn(_text: string): void {}

  protected override render(): TemplateResult {
    return html``;
  }
}
