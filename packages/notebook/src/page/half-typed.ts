/** What a tab had open when it went out of sight: where it was, what was chosen, and what was typed and not entered. */
export interface LeftOpen {
  readonly scroll: number;
  readonly chosen: string;
  readonly typed?: { readonly label: string; readonly text: string };
}

const keyOf = (id: string): string => `meshwright notebook ${id}`;

/** What this tab had open of a notebook, once: a tab that was thrown away comes back as it was. */
export function takeLeftOpen(id: string): LeftOpen | undefined {
  try {
    const text = sessionStorage.getItem(keyOf(id));
    sessionStorage.removeItem(keyOf(id));
    const { scroll, chosen, typed } = JSON.parse(text ?? "null") as Record<string, unknown>;
    const { label, text: half } = (typed ?? {}) as Record<string, unknown>;
    return {
      scroll: Number(scroll) || 0,
      chosen: typeof chosen === "string" ? chosen : "",
      ...(typeof label === "string" && typeof half === "string" && { typed: { label, text: half } }),
    };
  } catch {
    return undefined;
  }
}

/** Notes what this tab has open; a browser that keeps nothing forgets it. */
export function leaveOpen(id: string, open: LeftOpen): void {
  try {
    sessionStorage.setItem(keyOf(id), JSON.stringify(open));
  } catch {
    // There is nothing else that outlives a tab.
  }
}

/** The field that an event is about, and its name: text only, and not the post. */
export function fieldOf(event: Event): { readonly label: string; readonly text: string } | undefined {
  const [inner] = event.composedPath();
  if (!(inner instanceof HTMLInputElement) || !/^(text|search|)$/.test(inner.type)) return undefined;
  const label = inner.getAttribute("aria-label") ?? inner.labels?.[0]?.textContent?.trim();
  return label ? { label, text: inner.value } : undefined;
}

/** A field by its name, in whatever part of the page. */
export function fieldCalled(root: ParentNode, label: string): HTMLInputElement | undefined {
  for (const one of root.querySelectorAll<HTMLElement>("*")) {
    if (one instanceof HTMLInputElement && one.getAttribute("aria-label") === label) return one;
    const inner = one.shadowRoot && fieldCalled(one.shadowRoot, label);
    if (inner) return inner;
  }
  return undefined;
}
