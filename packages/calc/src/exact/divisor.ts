/** Greatest common divisor of two safe integers. Whole 32-bit numbers divide several times faster: get there, stay there. */
export function commonDivisor(a: number, b: number): number {
  a = Math.abs(a);
  while (b > 0x7fffffff) [a, b] = [b, a % b];
  return b ? smallDivisor(b, a % b) : a;
}

function smallDivisor(a: number, b: number): number {
  while (b) {
    const rest = a % b;
    a = b;
    b = rest;
  }
  return a;
}

/** Greatest common divisor of an integer and a positive one, of any size. */
export function wideDivisor(a: bigint, b: bigint): bigint {
  if (a < 0n) a = -a;
  while (b > 0x1fffffffffffffn) [a, b] = [b, a % b];
  return b ? BigInt(commonDivisor(Number(b), Number(a % b))) : a;
}
