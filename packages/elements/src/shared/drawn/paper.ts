/** The width of the narrowest sheet between its margins, in pixels: A5 with a centimetre on either side, and a little to spare. */
export const paperWidth = 470;

const listeners: ((isOnPaper: boolean) => void)[] = [];
let isOnPaper = false;

/** Whether what is drawn now is drawn for paper. Paper is laid out without asking anybody: it is drawn for the narrowest there is. */
export const onPaper = (): boolean => isOnPaper;

/** Calls back before the page is printed, and when it has been. */
export function whenPrinted(again: (isOnPaper: boolean) => void): void {
  if (!listeners.length)
    for (const type of ["beforeprint", "afterprint"])
      globalThis.addEventListener(type, () => {
        isOnPaper = type === "beforeprint";
        for (const listener of listeners) listener(isOnPaper);
      });
  listeners.push(again);
}
