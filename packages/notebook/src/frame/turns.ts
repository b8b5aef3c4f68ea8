// What is out of sight is drawn when it comes in sight, or when the hands rest, one after the other: whoever changes a count waits for
// what he sees, and nothing is out of date for longer than a moment.

/** Something that draws when its turn has come. */
export interface Waiting {
  wake(): void;
}

/** As long as this after an edit. */
const rest = 300;

/** Drawn before it can be seen by scrolling on. */
const margin = "200px 0px";

const waiting = new Set<Waiting>();
let timer: ReturnType<typeof setTimeout> | undefined;

const whenIdle = (act: () => void): void => {
  // Not every browser tells when it is idle.
  const { requestIdleCallback: ask } = globalThis as Partial<typeof globalThis>;
  if (ask) ask(act, { timeout: 500 });
  else setTimeout(act, 30);
};

function next(): void {
  const [one] = waiting;
  one?.wake();
  if (waiting.size) whenIdle(next);
}

/** The hands have not come to rest yet. */
export function stillWorking(): void {
  if (!waiting.size) return;
  clearTimeout(timer);
  timer = setTimeout(() => whenIdle(next), rest);
}

export function waits(one: Waiting): void {
  waiting.add(one);
  stillWorking();
}

export const waitsNoMore = (one: Waiting): boolean => waiting.delete(one);

/** Paper shows everything. */
const wakeAll = (): void => {
  for (const one of waiting) one.wake();
};

const seen = new WeakMap<Element, (isSeen: boolean) => void>();
let sights: IntersectionObserver | undefined;

/** Tells whether an element is in sight, or nearly. */
export function watchSight(element: Element, tell: (isSeen: boolean) => void): void {
  if (!globalThis.IntersectionObserver) return tell(true);
  if (!sights) {
    sights = new IntersectionObserver(
      (entries) => {
        for (const { target, isIntersecting } of entries) seen.get(target)?.(isIntersecting);
      },
      { rootMargin: margin },
    );
    addEventListener("beforeprint", wakeAll);
  }
  seen.set(element, tell);
  sights.observe(element);
}

export const leaveSight = (element: Element): void => sights?.unobserve(element);

/** Resolves as so many frames from now are made. */
export const frames = (count: number): Promise<void> =>
  new Promise((done) => {
    const next = (left: number): void => void (left ? requestAnimationFrame(() => next(left - 1)) : done());
    next(count);
  });

/** A picture takes measure in a frame and is drawn in the next: once both are painted. */
export const onceSeen = (act: () => void): void => void frames(2).then(() => setTimeout(act));
