// Fractions of whole numbers, for answers that the search has no part in.

/** A fraction of whole numbers, `d` above zero, not reduced. */
export interface Ratio {
  readonly n: bigint;
  readonly d: bigint;
}
export const ratio = (n: number | bigint, d: number | bigint = 1n): Ratio => ({ n: BigInt(n), d: BigInt(d) });
export const times = (a: Ratio, b: Ratio): Ratio => ({ n: a.n * b.n, d: a.d * b.d });
export const over = (a: Ratio, b: Ratio): Ratio => ({ n: a.n * b.d, d: a.d * b.n });
export const plus = (a: Ratio, b: Ratio): Ratio => ({ n: a.n * b.d + b.n * a.d, d: a.d * b.d });
export const minus = (a: Ratio, b: Ratio): Ratio => plus(a, { n: -b.n, d: b.d });
export const compare = (a: Ratio, b: Ratio): number => {
  const [x, y] = [a.n * b.d, b.n * a.d];
  return x < y ? -1 : x > y ? 1 : 0;
};
export const abs = (a: Ratio): Ratio => (a.n < 0n ? { n: -a.n, d: a.d } : a);
export const greatest = (list: readonly Ratio[]): Ratio => list.reduce((a, b) => (compare(a, b) >= 0 ? a : b));
const divisor = (a: bigint, b: bigint): bigint => (b ? divisor(b, a % b) : a < 0n ? -a : a);
export const text = ({ n, d }: Ratio): string => {
  const common = divisor(n, d) || 1n;
  return `${n / common}/${d / common}`;
};
/** `"4.20"`, `"3/2"`, `"118 mm"`, `"1/8 in"`: a number, or millimetres. */
export function read(input: string | number): Ratio {
  const [number = "", unit] = String(input).split(" ");
  const [top = "", bottom = "1"] = number.split("/");
  const [whole = "", part = ""] = top.split(".");
  const value = ratio(BigInt(whole + part), 10n ** BigInt(part.length) * BigInt(bottom));
  return unit === "in" ? times(value, ratio(254, 10)) : value;
}
