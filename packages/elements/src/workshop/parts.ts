import type { Build } from "@meshwright/calc/build";
import type { Rational } from "@meshwright/calc/exact";
import type { Part } from "@meshwright/calc/build";

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
export function dateText(date: string, locale: string): string {
  const day = new Date(`${date}T12:00:00Z`);
  return Number.isNaN(day.getTime())
    ? date
    : new Intl.DateTimeFormat(locale, { dateStyle: "medium", timeZone: "UTC" }).format(day);
}
