/** The self-contained script has `load-second-classic.ts` instead. */
export const loadSecond = (): Promise<void> =>
  import("./second.js").then(
    () => undefined,
    (error: unknown) => console.warn("Meshwright: what comes second could not be loaded; figures stay alive.", error),
  );
