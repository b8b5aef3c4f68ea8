/**
 * What the elements of a page ask for and the build does not have: for its author. Apart from the build's state: a complaint
 * changes no figure, and nobody who draws figures is told.
 */
export class Complaints {
  /** Told when there is another complaint, or one less. */
  readonly watchers = new Set<() => void>();
  readonly #by = new Map<object, string>();

  get messages(): readonly string[] {
    return [...this.#by.values()];
  }

  /** Somebody could not draw what it was asked to; or, without a message, it can again or is gone. */
  from(whom: object, message?: string): void {
    if (this.#by.get(whom) === message) return;
    if (message) this.#by.set(whom, message);
    else this.#by.delete(whom);
    for (const watcher of this.watchers) watcher();
  }
}
