import { buildFromLink } from "@meshwright/calc/document";
import { BuildStore, buildsMoved, page, type BuildHolder, type Follower } from "@meshwright/elements/store";
import { askedOf } from "./shown.js";

const element = <Tag extends keyof HTMLElementTagNameMap>(tag: Tag, text = ""): HTMLElementTagNameMap[Tag] => {
  const made = document.createElement(tag);
  made.textContent = text;
  return made;
};

/**
 * The content of `embed.html`: the elements that `show` names, of the drivetrain that the address carries after its `#`. A
 * reader may change counts; the address is never written.
 */
export class MwFrame extends HTMLElement implements BuildHolder, Follower {
  static readonly tag = "mw-frame";

  readonly store = new BuildStore();
  #back: HTMLButtonElement | undefined;

  connectedCallback(): void {
    page().holders.add(this);
    buildsMoved();
    this.store.followers.add(this);
    addEventListener("hashchange", this.#read);
    void this.#read();
  }

  disconnectedCallback(): void {
    page().holders.delete(this);
    buildsMoved();
    this.store.followers.delete(this);
    removeEventListener("hashchange", this.#read);
  }

  stateChanged(): void {
    if (this.#back) this.#back.hidden = !this.store.changed;
  }

  readonly #read = async (): Promise<void> => {
    const link = location.hash.slice(1);
    const { shown, faults } = askedOf(location.search);
    const reading = link ? await buildFromLink(link) : undefined;
    const said = [...faults];
    if (!reading) said.push("This address carries no drivetrain. The notebook writes one that does.");
    else if (!reading.ok)
      said.push(`The drivetrain in this address cannot be read. ${reading.findings[0]?.message ?? ""}`.trim());
    const content: HTMLElement[] = [];
    if (reading?.ok) {
      this.store.publish(reading.build);
      const { title } = reading.build;
      if (title) document.title = title;
      for (const { name, of } of shown) {
        const one = document.createElement(`mw-${name}`);
        if (of !== undefined) one.setAttribute("of", of);
        content.push(one);
      }
      content.push(this.#foot(title));
    }
    const faultLines = said.map((sentence) => {
      const line = element("p", sentence);
      line.setAttribute("role", "note");
      return line;
    });
    this.replaceChildren(...faultLines, ...content);
    this.dataset.drawn = "yes";
  };

  /** Whose it is; and the way back to the author's numbers, whose place is kept free. */
  #foot(title: string | undefined): HTMLElement {
    const foot = element("p");
    foot.className = "foot";
    this.#back = element("button", "Back to the author’s numbers");
    this.#back.type = "button";
    this.#back.hidden = true;
    this.#back.addEventListener("click", () => this.store.reset());
    foot.append(element("span", title ?? ""), this.#back);
    return foot;
  }
}
