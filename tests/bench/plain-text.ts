// The least that an element made with Lit can be: a text, drawn by a template.
import { LitElement, html } from "lit";

class PlainText extends LitElement {
  static override properties = { text: {} };
  declare text: string;

  protected override render(): unknown {
    return html`<span>${this.text}</span>`;
  }
}

customElements.define("plain-text", PlainText);
