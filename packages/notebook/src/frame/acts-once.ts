// A list whose choice is carried out at once, and which shows its first entry again. On a list that is closed, an arrow key chooses
// already in some browsers, one entry after the other: there, what the keys have come to waits for Enter.
import { noChange } from "lit";
import { directive, Directive, type ElementPart } from "lit/directive.js";

/** Keys that say what is chosen; any other only goes through the list. */
const entering = new Set(["Enter", " "]);
/** Keys that leave the list, or come with another. */
const aside = new Set(["Tab", "Shift", "Control", "Alt", "Meta", "Escape"]);

class ActsOnce extends Directive {
  #select: HTMLSelectElement | undefined;
  #act: (value: string) => void = () => undefined;
  #isGoingThrough = false;

  override render(_act: (value: string) => void): typeof noChange {
    return noChange;
  }

  override update({ element }: ElementPart, [act]: [(value: string) => void]): typeof noChange {
    this.#act = act;
    if (!this.#select) {
      const select = (this.#select = element as HTMLSelectElement);
      select.addEventListener("keydown", (event) => this.#pressed(event));
      select.addEventListener("pointerdown", () => (this.#isGoingThrough = false));
      select.addEventListener("change", () => this.#isGoingThrough || this.#take());
      select.addEventListener("blur", () => this.#let());
    }
    return noChange;
  }

  #pressed(event: KeyboardEvent): void {
    if (event.altKey || aside.has(event.key)) return;
    const wasGoingThrough = this.#isGoingThrough;
    this.#isGoingThrough = !entering.has(event.key);
    if (event.key !== "Enter" || !wasGoingThrough || !this.#select!.value) return;
    event.preventDefault();
    this.#take();
  }

  #take(): void {
    const { value } = this.#select!;
    this.#let();
    if (value) this.#act(value);
  }

  /** Nothing is chosen any more. */
  #let(): void {
    this.#isGoingThrough = false;
    this.#select!.value = "";
  }
}

/** On a `<select>` whose first entry is empty: carries out what is chosen, once. */
export const actsOnce = directive(ActsOnce);
