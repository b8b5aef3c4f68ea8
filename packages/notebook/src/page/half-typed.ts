/** A field that text is typed into. */
export type Field = HTMLInputElement | HTMLTextAreaElement;

/** What stands in a field and was not entered, and what the field is called. */
export interface HalfTyped {
  readonly label: string;
  readonly text: string;
}

/** What a tab had open when it went out of sight: where it was, what was chosen, and what was typed and not entered. */
export interface LeftOpen {
  readonly scroll: number;
  readonly chosen: string;
  readonly typed: readonly HalfTyped[];
  /** A sheet of parts that is being read, as the page of parts gives and takes it. */
  readonly sheet?: unknown;
}

const keyOf = (id: string): string => `meshwright notebook ${id}`;

const isHalfTypedOne = (value: unknown): value is HalfTyped => {
  const { label, text } = (value ?? {}) as Readonly<Record<string, unknown>>;
  return typeof label === "string" && typeof text === "string";
};

/** What this tab had open of a notebook, once: a tab that was thrown away comes back as it was. */
export function takeLeftOpen(id: string): LeftOpen | undefined {
  try {
    const text = sessionStorage.getItem(keyOf(id));
    sessionStorage.removeItem(keyOf(id));
    const { scroll, chosen, typed, sheet } = JSON.parse(text ?? "null") as Record<string, unknown>;
    return {
      scroll: Number(scroll) || 0,
      chosen: typeof chosen === "string" ? chosen : "",
      typed: Array.isArray(typed) ? typed.filter(isHalfTypedOne) : [],
      sheet,
    };
  } catch {
    return undefined;
  }
}

/** Notes what this tab has open; what is too much for the browser is noted without its sheet. */
export function leaveOpen(id: string, open: LeftOpen): void {
  for (const one of [open, { ...open, sheet: undefined }])
    try {
      return sessionStorage.setItem(keyOf(id), JSON.stringify(one));
    } catch {
      // There is nothing else that outlives a tab.
    }
}

/** The field that an event is about: text only, and not the post. */
export function fieldOf(event: Event): Field | undefined {
  const [inner] = event.composedPath();
  if (inner instanceof HTMLTextAreaElement) return inner.readOnly ? undefined : inner;
  return inner instanceof HTMLInputElement && /^(text|search|)$/.test(inner.type) ? inner : undefined;
}

/**
 * Whether leaving a field enters what was typed in it: in a form, and in a question with several blanks, it does not; in a text of
 * several lines it does where the text is the notebook's.
 */
export const isEnteredByLeaving = (field: Field): boolean =>
  field instanceof HTMLTextAreaElement ? "was" in field.dataset : !field.form && !field.classList.contains("blank");

/** Whether a field holds something that nobody has taken yet: undoing is its own then. */
export const isHalfTyped = ({ value, dataset, ariaValueNow }: Field): boolean =>
  value !== "" && value !== (dataset.was ?? ariaValueNow);

const labelOf = (field: Field): string | undefined =>
  field.getAttribute("aria-label") ?? field.labels?.[0]?.textContent?.trim();

/** What stands in a field and was not entered. */
export function typedIn(field: Field): HalfTyped | undefined {
  const label = labelOf(field);
  return label && field.isConnected && isHalfTyped(field) ? { label, text: field.value } : undefined;
}

/** A field by its name, in whatever part of the page. */
export function fieldCalled(root: ParentNode, label: string): Field | undefined {
  for (const one of root.querySelectorAll<HTMLElement>("*")) {
    if ((one instanceof HTMLInputElement || one instanceof HTMLTextAreaElement) && labelOf(one) === label) return one;
    const inner = one.shadowRoot && fieldCalled(one.shadowRoot, label);
    if (inner) return inner;
  }
  return undefined;
}
