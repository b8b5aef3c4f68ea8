import { localeOf as localeIn } from "@meshwright/calc/article";
import { composed, rootsOf } from "./composed.js";

const observers = new WeakMap<Node, { count: number; readonly observer: MutationObserver }>();

/** The language that an element stands in, as a tag that `Intl` understands. */
export const localeOf = (element: Node): string => localeIn(composed, element);

/**
 * Follows `lang` and `dir` on everything around an element, with one observer for all elements of a root.
 *
 * @returns the roots followed, to be given back to {@link unfollow}
 */
export function follow(element: Node, changed: () => void): readonly Node[] {
  const roots = rootsOf(element);
  for (const root of roots) {
    const known = observers.get(root);
    if (known) known.count++;
    else {
      const observer = new MutationObserver(changed);
      observer.observe(root, { attributes: true, subtree: true, attributeFilter: ["lang", "dir"] });
      observers.set(root, { count: 1, observer });
    }
  }
  return roots;
}

/** Stops following; the last one of a root takes its observer away. */
export function unfollow(roots: readonly Node[]): void {
  for (const root of roots) {
    const known = observers.get(root);
    if (known && --known.count === 0) {
      known.observer.disconnect();
      observers.delete(root);
    }
  }
}
