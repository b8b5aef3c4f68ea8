import { beside } from "../words/index.js";

/** Stands for `load.ts` in the self-contained script. */
export const load = beside("findings");
