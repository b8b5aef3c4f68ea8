import { fail } from "./errors.js";

const formats = /* @__PURE__ */ new Map<string, Intl.NumberFormat>();

/** A formatter, kept for the next time: making one costs a hundred times as much as using it. */
export function numberFormat(locale: string, options?: Intl.NumberFormatOptions): Intl.NumberFormat {
  const key = locale + JSON.stringify(options);
  let format = formats.get(key);
  if (!format) {
    try {
      format = new Intl.NumberFormat(locale, options);
    } catch {
      return fail("not-a-locale", "locale", locale, "a language tag");
    }
    if (formats.size > 99) formats.clear();
    formats.set(key, format);
  }
  return format;
}
