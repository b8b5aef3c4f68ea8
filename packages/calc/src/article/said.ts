/** Attributes of an element by name, as they stand; empty ones say nothing. */
export type Attributes = Readonly<Record<string, string | number | boolean | null | undefined>>;

/** An attribute's text, if it says anything. */
export function said(attributes: Attributes, name: string): string | undefined {
  const value = attributes[name];
  return value === undefined || value === null || value === "" ? undefined : String(value);
}
