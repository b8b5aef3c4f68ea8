import { ratioOfCoprimes, type Bounded, type Rational } from "../exact/index.js";

const bitsOf = (value: bigint): number => value.toString(16).length * 4;

/** What a power of two makes of a whole number. */
const scaled = (mantissa: bigint, exponent: number): Rational =>
  exponent < 0 ? ratioOfCoprimes(mantissa, 1n << BigInt(-exponent)) : ratioOfCoprimes(mantissa << BigInt(exponent), 1n);

/**
 * A product above zero between two short numbers. The exact one has as many digits as all its factors together, so that a row of
 * ten thousand would cost a thousand times what a row of ten costs a step; what is shown of it has only a few.
 */
export class Near {
  readonly #under: bigint;
  readonly #over: bigint;
  readonly #exponent: number;
  readonly #bits: number;

  /** @param bits how long the numbers are kept */
  private constructor(bits: number, under: bigint, over: bigint, exponent: number) {
    this.#bits = bits;
    this.#under = under;
    this.#over = over;
    this.#exponent = exponent;
  }

  static one(bits: number): Near {
    return new Near(bits, 1n, 1n, 0);
  }

  times({ numerator, denominator }: Rational): Near {
    const [under, over] = [this.#under * numerator, this.#over * numerator];
    // As long as it has to be, whatever is divided off.
    const shift = this.#bits + bitsOf(denominator) - bitsOf(under);
    const fit = (value: bigint): bigint => (shift > 0 ? value << BigInt(shift) : value >> BigInt(-shift));
    return new Near(
      this.#bits,
      fit(under) / denominator,
      fit(over) / denominator + (shift < 0 ? 2n : 1n),
      this.#exponent - shift,
    );
  }

  get low(): Rational {
    return scaled(this.#under, this.#exponent);
  }

  get high(): Rational {
    return scaled(this.#over, this.#exponent);
  }
}

/** Both ends of a running product, each between two short numbers. */
export interface NearEnds {
  readonly low: Near;
  readonly high: Near;
}

export const nearTimes = ({ low, high }: NearEnds, by: Bounded): NearEnds => {
  const first = low.times(by.low);
  return { low: first, high: low === high && by.low === by.high ? first : high.times(by.high) };
};

/** How many bits running products of these factors take, at their largest, to be told apart to a hundred digits. */
export function bitsFor(factors: readonly Bounded[]): number {
  let [size, most] = [0, 0];
  for (const { high } of factors) most = Math.max(most, (size += Math.log2(high.toNumber())));
  return 512 + Math.ceil(most);
}
