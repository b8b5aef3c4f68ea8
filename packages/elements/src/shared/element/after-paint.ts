const waiting: (() => void)[] = [];

const actAll = (): void => {
  // Each in a turn of its own: one that fails keeps no other from being done.
  for (const act of waiting.splice(0)) queueMicrotask(act);
};

/**
 * Does something once what is being drawn has been painted: all that is asked for until then together. Where nothing is painted,
 * as in a page that nobody looks at, it is done a tenth of a second later.
 */
export function afterPaint(act: () => void): void {
  if (waiting.push(act) > 1) return;
  requestAnimationFrame(() => setTimeout(actAll));
  setTimeout(actAll, 100);
}
