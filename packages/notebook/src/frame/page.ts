import { BuildStore, buildsMoved, page, type BuildHolder } from "@meshwright/elements/store";
import { NotebookPart } from "./part.js";
import { leaveSight, stillWorking, waits, waitsNoMore, watchSight } from "./turns.js";

/**
 * One page of the notebook, with what the elements on it draw from. Out of sight it waits for its turn: then it is told of the
 * drivetrain, and its elements with it.
 */
export abstract class NotebookPage extends NotebookPart implements BuildHolder {
  readonly store = new BuildStore();
  /** Whoever reads is whoever writes. */
  readonly isOwn = true;
  /** Whether it is in sight, or nearly. */
  protected isSeen = false;
  #due: (() => void) | undefined;

  override connectedCallback(): void {
    super.connectedCallback();
    page().holders.add(this);
    buildsMoved();
    watchSight(this, (isSeen) => {
      this.isSeen = isSeen;
      if (!isSeen) return;
      this.wake();
      this.seen();
    });
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    page().holders.delete(this);
    buildsMoved();
    leaveSight(this);
    this.wake();
  }

  override requestUpdate(...parameters: Parameters<NotebookPart["requestUpdate"]>): void {
    super.requestUpdate(...parameters);
    stillWorking();
  }

  protected override scheduleUpdate(): void | Promise<unknown> {
    // Where somebody writes, it has to be right before the next key.
    if (this.isSeen || this.matches(":focus-within")) return super.scheduleUpdate();
    const due = new Promise<void>((done) => (this.#due = done));
    waits(this);
    return due.then(() => super.scheduleUpdate());
  }

  protected override willUpdate(changed: Map<PropertyKey, unknown>): void {
    super.willUpdate(changed);
    const { build, store } = this;
    if (build === store.article && build === store.build) return;
    if (build) store.adopt(build);
    else store.publish(undefined);
  }

  /** It has come in sight. */
  protected seen(): void {}

  /** Its turn has come. */
  wake(): void {
    waitsNoMore(this);
    this.#due?.();
    this.#due = undefined;
  }

  /** Draws at once what is to be drawn. */
  async ready(): Promise<void> {
    // What has just been made asks for its turn in a moment.
    await Promise.resolve();
    this.wake();
    await this.updateComplete;
  }
}

/** What is opened on a page: it is there at once, and waits from then on while it is out of sight, whatever else the page shows. */
export abstract class NotebookPanel extends NotebookPage {
  protected override isSeen = true;
}
