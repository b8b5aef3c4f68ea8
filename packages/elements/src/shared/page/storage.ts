/** Reads what was kept on this device; nothing where storage is refused or empty. */
export function kept(key: string): string | undefined {
  try {
    return localStorage.getItem(key) ?? undefined;
  } catch {
    return undefined;
  }
}

/** Keeps a text on this device, or forgets it; false where storage is refused or full. */
export function keep(key: string, text: string | undefined): boolean {
  try {
    if (text === undefined) localStorage.removeItem(key);
    else localStorage.setItem(key, text);
    return true;
  } catch {
    return false;
  }
}
