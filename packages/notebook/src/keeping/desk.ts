// Who may write: one tab for each notebook. A frozen tab keeps its lock, so that this alone is not believed: every write names
// the version it follows as well.

/** A place to write at, for one notebook. */
export interface Desk {
  /** Takes it from whoever has it. */
  take(): void;
  /** Lets it go, and waits for it no longer. */
  leave(): void;
}

/**
 * Waits for the place to write a notebook at.
 *
 * @param got it is ours: now, or when the tab that had it is closed
 * @param lost another tab has taken it
 * @param waiting another tab has it
 */
export function deskFor(name: string, on: { got: () => void; lost: () => void; waiting: () => void }): Desk {
  const { locks } = navigator as { locks?: LockManager };
  if (!locks) {
    on.got();
    return { take: on.got, leave: () => undefined };
  }
  let let_go: () => void = () => undefined;
  let queue = new AbortController();
  let isLeft = false;
  const hold = (): Promise<void> =>
    new Promise((done) => {
      let_go = done;
      if (!isLeft) on.got();
      else done();
    });
  const wait = (): void => {
    queue = new AbortController();
    locks.request(name, { signal: queue.signal }, hold).catch((error: DOMException) => {
      // Taken from us, and not given up by us.
      if (!isLeft && !queue.signal.aborted && error.name === "AbortError") lost();
    });
  };
  const lost = (): void => {
    on.lost();
    wait();
  };
  /** Only who takes it away ends what holds it: a browser that has no place to give leaves it to the version that each write names. */
  const failed = ({ name: why }: DOMException): void => {
    if (isLeft) return;
    if (why === "AbortError") lost();
    else on.got();
  };
  void locks
    .request(name, { ifAvailable: true }, async (lock) => {
      if (lock) await hold();
      else {
        on.waiting();
        wait();
      }
    })
    .catch(failed);
  return {
    take() {
      queue.abort();
      locks.request(name, { steal: true }, hold).catch(failed);
    },
    leave() {
      isLeft = true;
      queue.abort();
      let_go();
    },
  };
}
