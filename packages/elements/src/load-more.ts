import { lack, type Later } from "./shared/element/index.js";

/** The self-contained script has `load-more-classic.ts` instead. */
export const loadMore = (what: Later): Promise<void> =>
  (what === "second" ? import("./second.js") : import("./third.js")).then(
    () => undefined,
    (error: unknown) => {
      console.warn(error);
      lack(`${what}.js`);
    },
  );
