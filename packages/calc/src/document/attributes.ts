/** What every element takes beside its own: which build it belongs to. */
export const ofAll = ["build"];

/** The attributes of each element: one table for page, command, guide and editors. */
export const elementAttributes = {
  "mw-build": ["src", "json", "mode", "permalink", "notebook", "seal"],
  "mw-value": [
    ...["figure", "of", "with", "group", "base", "scope", "from", "measure"],
    ...["over", "unit", "digits", "sign", "drive", "at"],
  ],
  "mw-teeth": ["of", "label", "min", "max", "free"],
  "mw-ratio-summary": ["of", "at"],
  "mw-overdrive-gauge": ["of", "with", "base", "scope", "at"],
  "mw-edits": ["sticks"],
  "mw-stage-editor": [],
  "mw-train-drawing": ["of", "at"],
  "mw-drive-line": ["still", "chosen", "open", "at"],
  "mw-pair-finder": ["of"],
  "mw-train-finder": ["of", "wheels", "lead"],
  "mw-count-finder": ["of", "figure", "output", "with", "want"],
  "mw-change-table": ["show", "against"],
  "mw-wheel-speed": ["of", "unit", "loaded"],
  "mw-working": ["of", "at"],
  "mw-order-list": ["from", "at"],
  "mw-parts-list": ["at"],
  "mw-bench-card": ["at"],
  "mw-quantity": ["of", "label"],
  "mw-measurements": ["of", "at"],
  "mw-unmarked-gear": [],
  "mw-turn-count": ["of"],
} as const satisfies Readonly<Record<string, readonly string[]>>;

/** The name of an element. */
export type ElementTag = keyof typeof elementAttributes;
