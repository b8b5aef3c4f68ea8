/** The JSON Pointer (RFC 6901) of something inside what another one points to. */
export const pointerTo = (pointer: string, key: string | number): string =>
  `${pointer}/${String(key).replace(/~/g, "~0").replace(/\//g, "~1")}`;
