import { spotOf, type Build } from "@meshwright/calc/drivetrain";
import { fill } from "@meshwright/calc/languages";
import type { Words } from "../../languages/words/en.js";

/** What a count at an address is called: the gear's own name, or its stage and its place there. */
export function nameOf(build: Build, address: string, words: Pick<Words, "fields" | "gear">): string {
  const spot = spotOf(build, address);
  const stage = spot?.stage as Record<string, unknown> | undefined;
  if (!stage) return address;
  const [id, field, place] = address.split(".");
  const own = stage[`${field}Label`];
  if (own) return String(own);
  const label = String(stage.label ?? id);
  if (!field) return label;
  const known = (words.fields as Record<string, string>)[field];
  return `${label}: ${place === undefined ? (known ?? field) : fill(words.gear, +place + 1)}`;
}
