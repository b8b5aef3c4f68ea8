/** One more step of a JSON Pointer (RFC 6901). */
export const step = (pointer: string, key: string | number): string =>
  `${pointer}/${String(key).replace(/~/g, "~0").replace(/\//g, "~1")}`;
