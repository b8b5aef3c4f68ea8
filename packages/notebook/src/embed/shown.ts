import { nearestTo } from "@meshwright/calc/document";

/** The elements that make sense alone in a frame. */
export const framed = [
  "drive-line",
  "ratio-summary",
  "overdrive-gauge",
  "train-drawing",
  "wheel-speed",
  "change-table",
  "parts-list",
  "order-list",
  "bench-card",
  "working",
] as const;
export type Framed = (typeof framed)[number];

/** One element of a frame: which it is, and the stage or axle that it speaks of. */
export interface Shown {
  readonly name: Framed;
  readonly of?: string;
}

/** What an address asks to be shown: elements by name, and a sentence about each that there is none of. */
export interface Asked {
  readonly shown: readonly Shown[];
  readonly faults: readonly string[];
}

const isFramed = (name: string): name is Framed => (framed as readonly string[]).includes(name);

/**
 * Reads `show=drive-line,train-drawing:primary`; without it the line of drive.
 */
export function askedOf(search: string): Asked {
  const asked = new URLSearchParams(search).get("show") ?? "drive-line";
  const shown: Shown[] = [];
  const faults: string[] = [];
  for (const one of asked.split(",").filter(Boolean).slice(0, 12)) {
    const [name = "", of] = one.trim().split(":");
    if (isFramed(name)) shown.push({ name, ...(of && { of }) });
    else {
      const [near] = nearestTo(name, framed);
      faults.push(`This page shows nothing called “${name.slice(0, 40)}”${near ? `; there is ${near}` : ""}.`);
    }
  }
  return { shown, faults };
}

/** The address that shows elements of a drivetrain, by the link that carries it. */
export function frameAddress(page: string, link: string, shown: readonly Shown[]): string {
  const address = new URL(page);
  const show = shown.map(({ name, of }) => (of ? `${name}:${of}` : name)).join(",");
  address.search = show === "drive-line" ? "" : `?show=${show}`;
  address.hash = link;
  return address.href;
}
