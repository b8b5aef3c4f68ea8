import type { Finding } from "@meshwright/calc/stages";

/**
 * What the elements of a page ask for and the build does not have: for its author. Apart from the build's state: a complaint
 * changes no figure, and nobody who draws figures is told.
 */
export class Complaints {
  /** Told when there is another complaint, or one less. */
  readonly watchers = new Set<() => void>();
  readonly #by = new Map<object, readonly Finding[]>();

  /** By whom; those who complain of nothing are not among them. */
  get all(): ReadonlyMap<object, readonly Finding[]> {
    return this.#by;
  }

  /** What stands against what somebody asks for: nothing where all is well again, or it is gone. */
  from(whom: object, findings: readonly Finding[] = []): void {
    const before = this.#by.get(whom) ?? [];
    if (before.length === findings.length && findings.every((one, n) => sameFinding(one, before[n]!))) return;
    if (findings.length) this.#by.set(whom, findings);
    else this.#by.delete(whom);
    for (const watcher of this.watchers) watcher();
  }
}

/** Whether two findings say the same of the same place. */
export const sameFinding = (one: Finding, other: Finding): boolean =>
  one.code === other.code && one.at === other.at && one.severity === other.severity && one.message === other.message;
