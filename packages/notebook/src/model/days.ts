import { dateText } from "@meshwright/calc/article";

/** A day of the calendar as the notebook says it: "4 October 2026". */
export const dayText = (date: string): string => dateText(date, "en-GB", "long");
