import { scalars } from "../../document/index.js";
import type { CellContext, CellReader } from "./meaning.js";
import { readNumber } from "./number.js";
import { plain } from "./plain.js";

/** Currencies that are told apart by their letters (ISO 4217). */
const codes = new Set(
  "EUR GBP USD CHF JPY CNY CAD AUD NZD SEK NOK DKK ISK PLN CZK HUF RON BGN TRY HKD SGD TWD KRW INR THB MYR IDR PHP VND MXN BRL ARS CLP COP PEN UYU ZAR EGP MAD TND DZD LYD SAR AED QAR KWD BHD OMR JOD LBP IQD ILS UAH GEL RSD".split(
    " ",
  ),
);
const words: Readonly<Record<string, string>> = {
  EUR: "€|euro|euros|eu|ユーロ|يورو",
  GBP: "£|pound|pounds|pfund|livre|livres|libra|libras|ポンド|جنيه استرليني",
  USD: "us$|usd$|us dollar|us dollars",
  CHF: "sfr|sfr.|fr.|franken|francs suisses|スイスフラン",
  JPY: "円|yen|jp¥|日本円|ين",
  CNY: "rmb|元|yuan|cn¥",
  CAD: "c$|ca$|can$",
  AUD: "a$|au$",
  NZD: "nz$",
  HKD: "hk$",
  SGD: "s$",
  TWD: "nt$",
};
/** Signs that several currencies share, with the one that is perhaps meant. */
const shared: Readonly<Record<string, readonly string[]>> = {
  $: ["USD", "CAD", "AUD", "NZD", "MXN"],
  "¥": ["JPY", "CNY"],
  kr: ["SEK", "NOK", "DKK", "ISK"],
  dollar: ["USD", "CAD", "AUD", "NZD"],
  dollars: ["USD", "CAD", "AUD", "NZD"],
  ドル: ["USD"],
};
/** Currencies without a smaller coin: three digits behind a sign are thousands. */
const coinless = new Set(["JPY", "KRW", "CLP", "VND", "ISK", "IDR"]);

let named: ReadonlyMap<string, string> | undefined;

/** A currency by its letters, sign or name, in plain text; several where its sign is shared. */
export function currencyOf(word: string): string | readonly string[] | undefined {
  named ??= new Map(Object.entries(words).flatMap(([code, all]) => all.split("|").map((one) => [plain(one), code])));
  const upper = word.toUpperCase();
  return codes.has(upper) ? upper : (named.get(word) ?? (Object.hasOwn(shared, word) ? shared[word] : undefined));
}

/** Words around an amount that change nothing, and those that say that it is not quite the price. */
const silent =
  /^(?:(?:pro|per|je|par|por) )?(?:incl|inkl|inc|each|ea|st|stk|stuck|pc|pcs|piece|pce|ud|unidad|net|netto|brutto|ttc|tax incl|税込|個)?$/;

/** A cell's amount with what stands before and behind it. */
const shape = /^([^\d]*?)(\d[\d.,' ]*\d|\d|[.,]\d+)(?:[.,] ?-{1,2})?([^\d]*)$/;

interface Settled {
  readonly currency?: string | undefined;
  /** What is asked: the currencies that it can be. */
  readonly code?: "currency-missing" | "currency-shared";
  readonly among?: readonly string[];
}

/** What a sign of several currencies, or none, means in this column. */
function settle(found: string | readonly string[] | undefined, context: CellContext): Settled {
  const { currency, currencies = [], isJapanese } = context;
  if (typeof found === "string") return { currency: found };
  if (currency && (!found || found.includes(currency))) return { currency };
  if (found?.includes("JPY") && isJapanese) return { currency: "JPY" };
  if (found) return { currency: found[0], code: "currency-shared", among: found };
  const among = currencies.length ? currencies : ["EUR", "GBP", "USD"];
  return { currency: currencies.length === 1 ? currencies[0] : undefined, code: "currency-missing", among };
}

/** The cell's words for a currency. */
function currencyIn(before: string, after: string): { found?: string | readonly string[]; rest: string } {
  const sides = [plain(before.trim()), plain(after.trim().replace(/^[.,]?-+ ?/, ""))];
  for (const [n, side] of sides.entries()) {
    const found = currencyOf(side) ?? currencyOf(side.replace(/\.$/, ""));
    if (found) return { found, rest: sides[1 - n]! };
  }
  for (const [n, side] of sides.entries()) {
    const pieces = side.split(/[ /]+/);
    const at = pieces.findIndex((piece) => currencyOf(piece));
    if (at >= 0)
      return {
        found: currencyOf(pieces[at]!)!,
        rest: [...pieces.filter((_, m) => m !== at), sides[1 - n]!].join(" ").trim(),
      };
  }
  return { rest: sides.join(" ").trim() };
}

/** An amount with its currency before or behind it, in the head, or in a column of its own. */
export const readPrice: CellReader = (text, context, is) => {
  const unclear = { ask: { code: "price-unclear" } } as const;
  // Some write the sign where the point is: 4€20.
  const [, whole, sign, coins] = text.length > 20 ? [] : (/^(\d+) ?([€£$]) ?(\d\d)$/.exec(text) ?? []);
  if (whole) return readPrice(`${whole}.${coins} ${sign}`, context, is);
  const isFree = /^(?:free|gratis|kostenlos|gratuit|無料|مجاني)$/.test(text.length > 40 ? "" : plain(text));
  const [, before, digits, after] = text.length > 40 ? [] : (shape.exec(isFree ? "0" : text) ?? []);
  if (digits === undefined || /- *$/.test(before!)) return unclear;
  const { found, rest } = currencyIn(before!, after!);
  const { currency, code, among } = settle(found, context);
  const isCoinless = currency !== undefined && coinless.has(currency);
  const read = readNumber(digits, context.decimal);
  const isOpen = read && "either" in read && !isCoinless;
  // Three digits behind a sign are thousands of money sooner than thousandths.
  const value = !read ? "" : "value" in read ? read.value : read.either[1];
  // Ten digits are sooner a number to call or to order by.
  if (!scalars.amount!.pattern!.test(value) || Number(value) >= 1e9) return unclear;
  const set = currency ? { amount: value, currency } : {};
  const said = (amount: string, of = currency): string => (of ? `${amount} ${of}` : amount);
  const guess = currency ? { guess: said(value) } : {};
  if (rest !== "" && !silent.test(rest.replace(/^\/|[.]/g, "")))
    return { set, ask: { code: "price-unclear", guess: said(value) } };
  if (isOpen) {
    const signs = [read.sign, read.sign === "." ? "," : "."] as const;
    const choices = read.either.map((amount, n) => ({ answer: said(amount), column: { decimal: signs[n]! } }));
    return { set, ask: { code: "number-ambiguous", guess: said(value), choices } };
  }
  if (code)
    return {
      set,
      ask: { code, ...guess, choices: among!.map((one) => ({ answer: said(value, one), column: { currency: one } })) },
    };
  if (Number(value) === 0 && !context.isAnswer) return { set, ask: { code: "price-zero", ...guess } };
  return { set };
};

/** A currency by itself. */
export const readCurrency: CellReader = (text, context) => {
  const found = currencyOf(plain(text)) ?? (/^[A-Z]{3}$/.test(text) ? text : undefined);
  if (!found) return { ask: { code: "currency-unclear" } };
  const { currency, code, among } = settle(found, context);
  const choices = among?.map((answer) => ({ answer, column: { currency: answer } }));
  return { set: { currency }, ...(code && { ask: { code, guess: currency, choices } }) };
};
