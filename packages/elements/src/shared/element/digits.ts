export { writeCount } from "@meshwright/calc/report";

/**
 * A whole number as somebody typed it, in the digits of any script.
 *
 * @returns nothing where anything but digits stands in it, or more than a count can be
 */
export function readCount(text: string): number | undefined {
  const digits = text.normalize("NFKC").trim();
  if (!/^\p{Nd}{1,7}$/u.test(digits)) return undefined;
  let value = 0;
  for (const digit of digits) {
    // Every script's digits stand in a row of ten; its first is the one that no other of the row precedes.
    let zero = digit.codePointAt(0)!;
    const own = zero;
    while (/\p{Nd}/u.test(String.fromCodePoint(zero - 1))) zero--;
    value = value * 10 + ((own - zero) % 10);
  }
  return value;
}
