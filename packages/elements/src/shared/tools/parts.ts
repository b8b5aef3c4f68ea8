import type { Build, Part } from "@meshwright/calc/drivetrain";
import type { Rational } from "@meshwright/calc/exact";
import type { Need, OrderList } from "@meshwright/calc/parts";
import { Writer } from "@meshwright/calc/report";
import { fillCount, type Words } from "../words/index.js";
import type { ToolWords } from "../../languages/tools/en.js";

/** The parts that a build lists. */
export const partsOf = (build: Build | undefined): readonly Part[] => (build?.parts ?? []) as readonly Part[];

/** An amount of money as its locale writes it, from exact digits. */
export function moneyText(amount: Rational, currency: string, locale: string): string {
  const digits = new Intl.NumberFormat(locale, { style: "currency", currency });
  const { maximumFractionDigits = 2 } = digits.resolvedOptions();
  const text = amount.toDecimal({ minimumFractionDigits: maximumFractionDigits, maximumFractionDigits });
  return digits.format(text as unknown as number);
}

/** What a part is called. */
export const partName = ({ name, id, teeth, driver, driven }: Part): string =>
  name ?? `${id}${(teeth ?? driver) ? ` (${teeth ?? `${driver}, ${driven}`})` : ""}`;

/** A date as its locale writes it; text that is no date stays. */
export function dateText(date: string, locale: string, dateStyle: "medium" | "long" = "medium"): string {
  const day = new Date(`${date}T12:00:00Z`);
  return Number.isNaN(day.getTime())
    ? date
    : new Intl.DateTimeFormat(locale, { dateStyle, timeZone: "UTC" }).format(day);
}

/** What all that is to be bought costs, by currency; what has no price, and what no part answers, is counted. */
export function sumText({ sums, unpriced }: OrderList, shop: ToolWords, locale: string, missing = 0): string {
  const amounts = sums.map(({ amount, currency }) => moneyText(amount, currency, locale));
  const more = [
    unpriced ? fillCount(shop.unpriced, unpriced, locale) : [],
    missing ? fillCount(shop.unlisted, missing, locale) : [],
  ];
  return [...amounts, ...more.flat()].join(` ${shop.and} `);
}

/** What a place in the build asks for: what it is, its counts, its pitch. */
export function needText(need: Need, words: Words, shop: ToolWords, locale: string): string {
  const { is, teeth, either, driver, driven, value, pitch, beltPitch, length } = need;
  const { diameter, loadedDiameter, travel, bore, outside, label } = need;
  const size = diameter ?? loadedDiameter ?? travel?.length ?? (bore && outside ? `${bore}, ${outside}` : label);
  const counts = either
    ? new Intl.ListFormat(locale, { type: "disjunction" }).format(either.map(String))
    : (teeth ?? (driver ? `${driver} ${words.to} ${driven}` : (value ?? size ?? "")));
  const kind = (shop.partKinds as Readonly<Record<string, string>>)[is[0]!] ?? "";
  return [
    `${kind} ${counts}`.trim(),
    pitchText(pitch, shop),
    beltPitch,
    length && new Writer({ locale }).length(length),
  ]
    .filter(Boolean)
    .join(", ");
}

/** A pitch as it is marked. */
export const pitchText = ({ module, diametralPitch }: Need["pitch"] & object = {}, shop: ToolWords): string =>
  module !== undefined ? `${shop.module} ${module}` : diametralPitch === undefined ? "" : `${diametralPitch} DP`;
