import { MeshwrightError } from "./errors.js";
import { type Rational, rational, ratioOf } from "./rational.js";

/** A length in millimetres, exactly: `"118 mm"`, `"4.65 in"`, `"1/8 in"`, `"3.72 m"`; a number is in millimetres. An inch is 25.4 mm. */
export function lengthOf(text: string | number, at = "length"): Rational {
  if (typeof text === "number") return rational(text, { at });
  const match = typeof text === "string" && text.length < 100 ? /^(\S+?)\s?(mm|cm|m|in|ft)$/.exec(text) : undefined;
  if (!match)
    throw new MeshwrightError(
      "not-a-length",
      at,
      `Found ${JSON.stringify(text)?.slice(0, 40)}; expected a number with mm, cm, m, in or ft, such as "118 mm".`,
    );
  const tenths = { mm: 10, cm: 100, m: 10000, in: 254, ft: 3048 }[match[2] as "mm"];
  return rational(match[1]!, { at }).times(ratioOf(tenths, 10));
}
