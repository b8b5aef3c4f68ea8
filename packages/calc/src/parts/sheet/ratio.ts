import type { CellReader } from "./meaning.js";
import { readMeasure } from "./number.js";
import { plain } from "./plain.js";

/** A ratio as a build document takes it. */
const printed = /^(?:\d{1,9}(?:\.\d{1,6})?(?: ?: ?1)?|[1-9]\d{0,8}\/[1-9]\d{0,8})$/;

/**
 * A ratio as it is printed: "27:1", "2.74", "2,74 : 1", "52/19". 1:27 and 1/27 are asked about, since most who write so mean 27
 * turns of the motor; `i=1/27` is plain.
 */
export const readRatio: CellReader = (text) => {
  const unclear = { ask: { code: "ratio-unclear" } } as const;
  const [, symbol, ratio] =
    text.length > 40 ? [] : (/^(?:(i|ratio) *[=:]? *)?(\d.*|[.,]\d.*)$/.exec(plain(text)) ?? []);
  if (ratio === undefined) return unclear;
  const [first, sign, second, more] = ratio.split(/ *([:/]) */);
  const numberOf = (one = ""): string | undefined => {
    const value = readMeasure(one) ?? "0";
    return Number(value) > 0 && /^\d{1,9}(\.\d{1,6})?$/.test(value) ? value : undefined;
  };
  const [a, b] = [numberOf(first), numberOf(second)];
  if (a === undefined || (sign && b === undefined) || more !== undefined) return unclear;
  if (a === "1" && b !== undefined && b !== "1" && !symbol) {
    const turned = `${b}:1`;
    const choices = (b.includes(".") ? [turned] : [turned, `i=1/${b}`]).map((answer) => ({ answer }));
    return { set: { value: turned }, ask: { code: "ratio-turned", guess: turned, choices } };
  }
  if (printed.test(ratio)) return { set: { value: ratio } };
  if (!sign) return { set: { value: a } };
  if (b === "1") return { set: { value: `${a}:1` } };
  return `${a}${b}`.includes(".") ? unclear : { set: { value: `${a}/${b}` } };
};
