import { afterPaint } from "./after-paint.js";
import { MeshwrightElement } from "./element.js";

/**
 * What stands in a sentence: an article holds many of them, and they are seen first. Their text is drawn at once; what nobody sees,
 * listeners and fields, comes once it has been painted, or when somebody waits for the element or needs it.
 */
export abstract class InlineElement extends MeshwrightElement {
  static override readonly isRightAlone = true;

  protected isReady = false;

  /** Does what was put off: once, with everything drawn. */
  protected abstract ready(): void;

  readonly #makeReady = (): void => this.makeReady();

  protected makeReady(): void {
    if (this.isReady || !this.hasUpdated || !this.isConnected) return;
    this.isReady = true;
    this.ready();
  }

  override get updateComplete(): Promise<boolean> {
    return super.updateComplete.then((isDone) => {
      this.makeReady();
      return isDone;
    });
  }

  override connectedCallback(): void {
    super.connectedCallback();
    if (this.hasUpdated && !this.isReady) afterPaint(this.#makeReady);
  }

  protected override updated(changed: Map<PropertyKey, unknown>): void {
    super.updated(changed);
    if (!this.isReady) afterPaint(this.#makeReady);
  }
}
