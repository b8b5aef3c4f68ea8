import { mayDraw } from "../page/index.js";

/** The version of this copy of the library. */
export const version = "0.1.0";

/** A class that can be registered under the name it carries. */
export interface ElementClass extends CustomElementConstructor {
  readonly tag: string;
  readonly version: string;
}

/** The prototypes that are writable already: most are shared. */
const made = new WeakSet();

/** Frameworks set whatever an element has a name for: where there is nothing to set, it must do no harm. */
function writable(one: ElementClass): void {
  const end = globalThis.HTMLElement?.prototype as object | undefined;
  for (
    let type = one.prototype as object | null;
    type && type !== end && !made.has(type);
    type = Object.getPrototypeOf(type) as object | null
  ) {
    made.add(type);
    for (const [name, own] of Object.entries(Object.getOwnPropertyDescriptors(type)))
      if (own.get && !own.set) Object.defineProperty(type, name, { ...own, set: () => undefined });
  }
}

/**
 * Registers elements under their own names. A name that is taken stays with whoever has it: another copy of the same
 * version is the same, another version gets a warning, because the page then runs on the older promise. Where the page
 * refuses markup nothing is registered, and every fallback stays. Does nothing outside a browser.
 */
export function define(...classes: readonly ElementClass[]): void {
  const registry = globalThis.customElements as CustomElementRegistry | undefined;
  if (!registry) return;
  let drawable: boolean | undefined;
  for (const one of classes) {
    const taken = registry.get(one.tag) as Partial<ElementClass> | undefined;
    if (!taken) {
      if (!(drawable ??= mayDraw())) continue;
      writable(one);
      registry.define(one.tag, one);
    } else if (taken.version !== version) {
      console.warn(
        `<${one.tag}> is already defined by ${taken.version ? `version ${taken.version}` : "something else"}; ${version} leaves it.`,
      );
    }
  }
}
