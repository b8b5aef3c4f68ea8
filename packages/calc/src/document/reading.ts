import type { Build } from "../drivetrain/index.js";
import type { Finding } from "../stages/index.js";

/** A build that could be read, with what is odd about it; or what keeps it from being one. Told apart by `ok`. */
export type Reading =
  | { readonly ok: true; readonly build: Build; readonly findings: readonly Finding[] }
  | { readonly ok: false; readonly build?: undefined; readonly findings: readonly Finding[] };

/** What keeps something from being a build. */
export const refused = (...findings: readonly Finding[]): Reading => ({ ok: false, findings });
