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

/** The field that an event is about: text only, and not the post. */
export function fieldOf(event: Event): HTMLInputElement | undefined {
  const [inner] = event.composedPath();
  return inner instanceof HTMLInputElement && /^(text|search|)$/.test(inner.type) ? inner : undefined;
}

/** Whether leaving a field enters what was typed in it: in a form, and in a question with several blanks, it does not. */
export const isEnteredByLeaving = ({ form, classList }: HTMLInputElement): boolean =>
  !form && !classList.contains("blank");

/** Whether a field holds something that nobody has taken yet: undoing is its own then. */
export const isHalfTyped = ({ value, dataset, ariaValueNow }: HTMLInputElement): boolean =>
  value !== "" && value !== (dataset.was ?? ariaValueNow);

/** What stands in a field and was not entered, and what the field is called. */
export function typedIn(field: HTMLInputElement): LeftOpen["typed"] {
  const label = field.getAttribute("aria-label") ?? field.labels?.[0]?.textContent?.trim();
  return label && field.isConnected && isHalfTyped(field) ? { label, text: field.value } : undefined;
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
