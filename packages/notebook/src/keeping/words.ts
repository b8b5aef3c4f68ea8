import type { Keeping } from "./keeper.js";

const hours = new Intl.DateTimeFormat("en", { hour: "2-digit", minute: "2-digit", hour12: false });
const days = new Intl.DateTimeFormat("en-GB", { day: "numeric", month: "long" });

/** "18:42" of today, else the day with it. */
export function whenText(iso: string, today = new Date()): string {
  const date = new Date(iso);
  const hour = hours.format(date);
  if (date.toDateString() === today.toDateString()) return hour;
  return `${days.format(date)}, ${hour}`;
}

/** How the notebook is kept, in words: the truth, and no more. */
export function keepingText(keeping: Keeping): string {
  switch (keeping.is) {
    case "saved":
      return keeping.at ? "Saved in this browser only · no copy elsewhere" : "Nothing to save yet";
    case "saving":
      return "Saving …";
    case "following":
      return "Being edited in another tab.";
    case "full":
      return `Not saved since ${whenText(keeping.since)}: this device is full. It is still in this tab.`;
    case "nowhere":
      return {
        absent: "Not saved: this browser keeps nothing for this page. It is still in this tab.",
        "older-page":
          "Not saved: a newer copy of this page has kept notebooks here, and this one is older. Go online and reload. It is still in this tab.",
        "newer-page": `Not saved since ${whenText(keeping.since)}: a newer copy of this page is open in another tab. Reload this one. It is still in this tab.`,
        failed: `Not saved since ${whenText(keeping.since)}: the browser refused. It is still in this tab.`,
      }[keeping.why];
  }
}

/** Whether what is in this tab is nowhere else. */
export const isInTabOnly = ({ is }: Keeping): boolean => is === "full" || is === "nowhere";
