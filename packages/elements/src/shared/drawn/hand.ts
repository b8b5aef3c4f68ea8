import type { CountState } from "../element/index.js";
import type { BuildStore } from "../store/index.js";

/** A strip that stands at the bottom of the page for a build. */
export interface Strip {
  requestUpdate(): void;
}

const strips = new Map<BuildStore, Strip>();
let hand: CountState | undefined;

/** The count that somebody changes, or has changed last, of a build; nothing once it is gone. */
export const inHand = (store: BuildStore): CountState | undefined =>
  hand?.store === store && hand.element.isConnected ? hand : undefined;

/** A count of a sentence is taken up, or has changed. */
export function takeInHand(state: CountState): void {
  hand = state;
  if (state.store) strips.get(state.store)?.requestUpdate();
}

/** The strip of a build, which has the keys of its counts. */
export const stripOf = (store: BuildStore | undefined): Strip | undefined => store && strips.get(store);

/**
 * One strip a page: of the build that was changed last.
 *
 * @param claims whether its build was just changed; else it stands only where no other one does
 */
export function standAlone(store: BuildStore, strip: Strip, claims: boolean): void {
  if (strips.get(store) === strip || (!claims && strips.size)) return;
  const others = [...strips.values()];
  strips.clear();
  strips.set(store, strip);
  for (const one of others) one.requestUpdate();
}

/** A strip is closed, or leaves the page. */
export function standDown(strip: Strip): void {
  for (const [store, one] of strips) if (one === strip) strips.delete(store);
}
