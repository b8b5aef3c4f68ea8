export type Decimal = "," | ".";

/** A number as it was read: its plain decimal text, or the two that it can be. */
export type NumberRead =
  { readonly value: string } | { readonly either: readonly [string, string]; readonly sign: Decimal };

const plainNumber = (whole: string, fraction?: string): string =>
  `${whole.replace(/^0+(?=\d)/, "") || "0"}${fraction === undefined ? "" : `.${fraction}`}`;

const isGrouped = (whole: string, sign: string): boolean => {
  const [first = "", ...rest] = whole.split(sign);
  return first.length > 0 && first.length < 4 && rest.every((group) => group.length === 3);
};

/**
 * A number above or equal to zero with either decimal sign, thousands divided by a point, comma, blank or apostrophe. One
 * sign before exactly three digits can be either; `decimal` tells which is meant.
 *
 * @returns undefined where it is none
 */
export function readNumber(text: string, decimal?: Decimal): NumberRead | undefined {
  if (/^\d+$/.test(text)) return { value: plainNumber(text) };
  const joined = text.replace(/(\d)[ '](?=\d{3}(?!\d))/g, "$1");
  if (!/^[\d.,]*\d$/.test(joined)) return undefined;
  const last = Math.max(joined.lastIndexOf("."), joined.lastIndexOf(","));
  if (last < 0) return { value: plainNumber(joined) };
  const sign = joined[last] as Decimal;
  const [whole, fraction] = [joined.slice(0, last), joined.slice(last + 1)];
  const other = sign === "." ? "," : ".";
  if (whole.includes(sign)) {
    const all = joined.replaceAll(sign, "");
    return isGrouped(joined, sign) && /^\d+$/.test(all) ? { value: plainNumber(all) } : undefined;
  }
  if (whole.includes(other))
    return isGrouped(whole, other) ? { value: plainNumber(whole.replaceAll(other, ""), fraction) } : undefined;
  const asDecimal = plainNumber(whole, fraction);
  if (fraction.length !== 3 || whole.length > 3 || /^0*$/.test(whole)) return { value: asDecimal };
  const asGrouped = plainNumber(whole + fraction);
  if (decimal) return { value: decimal === sign ? asDecimal : asGrouped };
  return { either: [asDecimal, asGrouped], sign };
}

/** A measure of a part for a table: one sign before three digits is a decimal sign, since nothing of it is a thousand large. */
export function readMeasure(text: string): string | undefined {
  const read = readNumber(text);
  return read && ("value" in read ? read.value : read.either[0]);
}

/** Which decimal sign the cells of a column have; undefined where none decides it, or both do. */
export function decimalOf(texts: Iterable<string>): Decimal | undefined {
  const seen = new Set<Decimal>();
  for (const text of texts) {
    const [number = ""] = text.length < 60 ? (/\d[\d.,]*\d|[.,]\d+/.exec(text) ?? []) : [];
    const last = Math.max(number.lastIndexOf("."), number.lastIndexOf(","));
    if (last < 0) continue;
    const sign = number[last] as Decimal;
    const other = sign === "." ? "," : ".";
    const isRepeated = number.indexOf(sign) < last;
    if (isRepeated || number.includes(other)) seen.add(isRepeated ? other : sign);
    else if (number.length - last !== 4 || last === 0 || /^0/.test(number)) seen.add(sign);
  }
  const [only] = seen;
  return seen.size === 1 ? only : undefined;
}
