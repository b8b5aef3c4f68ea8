/** Fractions and linear equations of the tests' own: what code under test comes to is worked out here in another way. */
export class Fraction {
  readonly top: bigint;
  readonly bottom: bigint;

  constructor(top: bigint, bottom: bigint) {
    let [a, b] = [top < 0n ? -top : top, bottom < 0n ? -bottom : bottom];
    while (b) [a, b] = [b, a % b];
    const sign = bottom < 0n ? -1n : 1n;
    this.top = (sign * top) / (a || 1n);
    this.bottom = (sign * bottom) / (a || 1n);
  }

  static of(top: number | bigint, bottom: number | bigint = 1): Fraction {
    return new Fraction(BigInt(top), BigInt(bottom));
  }

  minus(other: Fraction): Fraction {
    return new Fraction(this.top * other.bottom - other.top * this.bottom, this.bottom * other.bottom);
  }
  times(other: Fraction): Fraction {
    return new Fraction(this.top * other.top, this.bottom * other.bottom);
  }
  over(other: Fraction): Fraction {
    return new Fraction(this.top * other.bottom, this.bottom * other.top);
  }
  toString(): string {
    return `${this.top}/${this.bottom}`;
  }
}

/** One equation: names with their factors, summing to zero. */
export type Equation = readonly (readonly [name: string, factor: Fraction])[];

/** Solves linear equations that sum to zero, with one unknown set to 1: by elimination. */
export function solved(equations: readonly Equation[], one: string): ReadonlyMap<string, Fraction> {
  const zero = Fraction.of(0);
  const names = [...new Set(equations.flat().map(([name]) => name))].filter((name) => name !== one);
  const rows = equations.map((equation) => {
    const sum = (name: string) =>
      equation.reduce((total, [other, factor]) => (other === name ? total.minus(zero.minus(factor)) : total), zero);
    return [...names.map(sum), zero.minus(sum(one))];
  });
  let done = 0;
  const pivots: number[] = [];
  names.forEach((_, column) => {
    const found = rows.findIndex((row, n) => n >= done && row[column]!.top !== 0n);
    if (found < 0) return;
    [rows[done], rows[found]] = [rows[found]!, rows[done]!];
    const pivot = rows[done]!;
    rows.forEach((row, n) => {
      if (n === done || row[column]!.top === 0n) return;
      const factor = row[column]!.over(pivot[column]!);
      rows[n] = row.map((value, m) => value.minus(pivot[m]!.times(factor)));
    });
    pivots.push(column);
    done++;
  });
  return new Map(pivots.map((column, n) => [names[column]!, rows[n]!.at(-1)!.over(rows[n]![column]!)]));
}
