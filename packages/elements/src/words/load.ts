import type { Words } from "./en.js";
import { fromFiles } from "./files.js";

/** The self-contained script has `load-classic.ts` instead. */
export const load = fromFiles<Words>({
  ar: () => import("./ar.js"),
  de: () => import("./de.js"),
  es: () => import("./es.js"),
  fr: () => import("./fr.js"),
  ja: () => import("./ja.js"),
});
