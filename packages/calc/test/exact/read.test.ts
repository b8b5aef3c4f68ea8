import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { rational, type RationalInput } from "../../src/exact/index.js";
import { fraction } from "./arbitrary.js";
import { refuses } from "./errors.js";

const read = (text: RationalInput): string => rational(text).toFraction();

describe("reading text", () => {
  it.each([
    ["62/15", "62/15"],
    ["2.6", "13/5"],
    ["-3", "-3/1"],
    ["+3", "3/1"],
    ["0", "0/1"],
    ["-0", "0/1"],
    ["+0.000", "0/1"],
    ["-0.0e5", "0/1"],
    ["007.50", "15/2"],
    [".5", "1/2"],
    ["-.5", "-1/2"],
    ["5.", "5/1"],
    ["5.e1", "50/1"],
    ["1e-7", "1/10000000"],
    ["1E+3", "1000/1"],
    ["-12.5e-1", "-5/4"],
    ["1.25e2", "125/1"],
    ["1e007", "10000000/1"],
    ["-62/15", "-62/15"],
    ["+62/15", "62/15"],
    ["062/015", "62/15"],
    ["0/5", "0/1"],
    ["9007199254740993", "9007199254740993/1"],
    ["123456789012345", "123456789012345/1"],
    ["1234567890123456", "1234567890123456/1"],
    ["9.99999999999999", "999999999999999/100000000000000"],
    ["0.1234567890123456789", "1234567890123456789/10000000000000000000"],
    ["123456789012345678901234567890/3", "41152263004115226300411522630/1"],
  ])("reads %s as %s", (text, expected) => expect(read(text)).toBe(expected));

  it("reads long decimals with exponents", () => {
    expect(rational("1E+400").numerator).toBe(10n ** 400n);
    expect(rational("-1.5E-400").denominator).toBe(2n * 10n ** 400n);
    expect(rational("1e2000").isInteger).toBe(true);
    expect(rational("1e-2000").denominator).toBe(10n ** 2000n);
    expect(rational("7".repeat(2000)).isInteger).toBe(true);
  });

  it("reads any decimal and fraction as its digits say", () => {
    const digits = (least: number): fc.Arbitrary<string> => fc.stringMatching(new RegExp(`^[0-9]{${least},20}$`));
    fc.assert(
      fc.property(
        fc.constantFrom("", "-", "+"),
        digits(1),
        digits(0),
        fc.option(fc.integer({ min: -30, max: 30 })),
        (sign, whole, rest, power) => {
          const text = `${sign}${whole}${rest && `.${rest}`}${power === null ? "" : `e${power}`}`;
          const size = BigInt(`${whole}${rest}`) * (sign === "-" ? -1n : 1n) * 10n ** BigInt(Math.max(power ?? 0, 0));
          expect(read(text)).toBe(fraction(size, 10n ** BigInt(rest.length + Math.max(-(power ?? 0), 0))));
        },
      ),
      { numRuns: 1000 },
    );
    fc.assert(
      fc.property(fc.constantFrom("", "-", "+"), digits(1), digits(1), (sign, top, bottom) => {
        const text = `${sign}${top}/${bottom}`;
        if (BigInt(bottom) === 0n) refuses(() => rational(text), "zero-denominator", "input");
        else expect(read(text)).toBe(fraction(BigInt(top) * (sign === "-" ? -1n : 1n), BigInt(bottom)));
      }),
      { numRuns: 1000 },
    );
  });

  it.each([
    "",
    " ",
    "-",
    "+",
    ".",
    "-.",
    "/",
    "1/",
    "/2",
    "1//2",
    "1/2/3",
    "1/-2",
    "1/+2",
    "1.5/2",
    "1/2.5",
    "1/2e3",
    "1e",
    "e5",
    "1e+",
    "1e1.5",
    ".e1",
    "1.2.3",
    "1..2",
    "--1",
    "+-1",
    " 1",
    "1 ",
    "1\n",
    "\t1",
    "1 000",
    "1_000",
    "0x10",
    "0b1",
    "1n",
    "Infinity",
    "NaN",
    "one",
    "１２",
    "٣",
    "1:2",
    "1%",
    "1,5,5",
    "1,5.5",
    "1.5,5",
    "−1",
    "1-",
    "12a",
    "a12",
    "1.5a",
    "1/2a",
    "1;",
    "2.6\u0000",
    "1.5/",
    "12.34/5",
    "1/2.",
    "\ud800",
  ])("refuses %j", (text) => refuses(() => rational(text), "not-a-number", "input"));

  it("says what it found, and where", () => {
    refuses(
      () => rational("two", { at: "rear.driven" }),
      "not-a-number",
      "rear.driven",
      'Found "two"; expected a number such as 2.6 or 62/15.',
    );
    refuses(
      () => rational("x".repeat(1900)),
      "not-a-number",
      "input",
      `Found "${"x".repeat(40)}"; expected a number such as 2.6 or 62/15.`,
    );
    refuses(() => rational("1/0"), "zero-denominator", "input", 'Found "1/0"; expected another denominator.');
    refuses(() => rational("1/000"), "zero-denominator", "input");
    refuses(() => rational("123456789012345678/0"), "zero-denominator", "input");
  });

  it("has caps, and looks at them first", () => {
    refuses(() => rational("7".repeat(2001)), "too-long", "input", "Found 2001; expected up to 2000 characters.");
    refuses(() => rational("x".repeat(1e6)), "too-long", "input");
    refuses(
      () => rational("1e2001"),
      "exponent-too-large",
      "input",
      'Found "1e2001"; expected an exponent up to 2000.',
    );
    refuses(() => rational("1e-2001"), "exponent-too-large", "input");
    refuses(() => rational(`1e${"9".repeat(1900)}`), "exponent-too-large", "input");
    refuses(() => rational("0e999999999"), "exponent-too-large", "input");
  });
});

describe("a decimal comma", () => {
  it("is read where the locale writes one, and the point everywhere", () => {
    expect(rational("2,6", { locale: "de" }).toFraction()).toBe("13/5");
    expect(rational("-1234567,25", { locale: "fr" }).toFraction()).toBe("-4938269/4");
    expect(rational(",5", { locale: "sv-SE" }).toFraction()).toBe("1/2");
    expect(rational("2.6", { locale: "de" }).toFraction()).toBe("13/5");
    expect(rational("62/15", { locale: "de" }).toFraction()).toBe("62/15");
  });

  it("is refused elsewhere", () => {
    const sentence = 'Found "2,6"; expected a point, or a locale with a comma.';
    refuses(() => rational("2,6"), "decimal-comma", "input", sentence);
    refuses(() => rational("2,6", { locale: "en", at: "front" }), "decimal-comma", "front", sentence);
    refuses(() => rational("2,6", { locale: "de-CH" }), "decimal-comma", "input");
    refuses(() => rational("2,6", { locale: "" }), "decimal-comma", "input");
    refuses(() => rational("2.6,1", { locale: "de" }), "not-a-number", "input");
    refuses(
      () => rational("2,6", { locale: "not a tag" }),
      "not-a-locale",
      "locale",
      'Found "not a tag"; expected a language tag.',
    );
  });
});

describe("reading JS numbers", () => {
  it("means the shortest decimal text", () => {
    expect(read(0.1)).toBe("1/10");
    expect(read(-2.74)).toBe("-137/50");
    expect(read(1e-7)).toBe("1/10000000");
    expect(read(1.5e-10)).toBe("3/20000000000");
    expect(read(1e21)).toBe("1000000000000000000000/1");
    expect(read(1e20)).toBe("100000000000000000000/1");
    expect(read(1.23456789012345)).toBe("24691357802469/20000000000000");
    expect(read(0.00123456789012345)).toBe("24691357802469/20000000000000000");
    // The digits of the exponent are none of the number's.
    expect(read(1.2345678901234e-12)).toBe(fraction(12345678901234n, 10n ** 25n));
    expect(read(1e300)).toBe(`1${"0".repeat(300)}/1`);
    expect(read(2 ** 31)).toBe("2147483648/1");
    expect(read(Number.MAX_SAFE_INTEGER)).toBe("9007199254740991/1");
    expect(read(-Number.MAX_SAFE_INTEGER)).toBe("-9007199254740991/1");
  });

  it("refuses what may be a trace of binary rounding, and says so", () => {
    refuses(
      () => rational(0.1 + 0.2),
      "long-number",
      "input",
      "Found 0.30000000000000004; expected up to 15 digits, or text.",
    );
    for (const long of [
      1 / 3,
      4.35 * 100,
      2 ** 53,
      -1.2345678901234567e20,
      1.234567890123456,
      Math.PI,
      1.2345678901234567e-9,
    ])
      refuses(() => rational(long, { at: "x" }), "long-number", "x");
  });

  it("refuses what is no number", () => {
    refuses(() => rational(NaN), "not-finite", "input", "Found NaN; expected a finite number.");
    refuses(() => rational(-Infinity, { at: "front" }), "not-finite", "front");
  });

  it("agrees with the text of every number that it reads", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -999999999, max: 999999999 }),
        fc.integer({ min: -12, max: 6 }),
        (digits, power) => {
          const number = Number(`${digits}e${power}`);
          expect(read(number)).toBe(read(String(number)));
          expect(read(number)).toBe(read(`${digits}e${power}`));
        },
      ),
    );
  });

  it("reads bigints", () => {
    expect(read(-5n)).toBe("-5/1");
    expect(read(10n ** 40n)).toBe(`1${"0".repeat(40)}/1`);
  });
});
