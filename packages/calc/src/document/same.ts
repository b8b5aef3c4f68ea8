/**
 * Whether two values of a document mean the same: a number and its text do, whatever the order of keys; what is not there is
 * the same as nothing.
 */
export function sameValue(one: unknown, other: unknown): boolean {
  if (one === other) return true;
  if (typeof one !== "object" || typeof other !== "object" || !one || !other) {
    const isPlain = (value: unknown) => typeof value === "string" || typeof value === "number";
    return isPlain(one) && isPlain(other) ? String(one) === String(other) : (one ?? null) === (other ?? null);
  }
  if (Array.isArray(one) !== Array.isArray(other)) return false;
  const [a, b] = [one as Record<string, unknown>, other as Record<string, unknown>];
  return Object.keys({ ...a, ...b }).every((key) => sameValue(a[key], b[key]));
}
