/** A bar of the page's own at the bottom of the window, if one stands there: how high it is. */
function barAt(page: Document, own: Element): number {
  const { clientWidth, clientHeight } = page.documentElement;
  for (const found of page.elementsFromPoint?.(clientWidth / 2, clientHeight - 1) ?? []) {
    if (found === own) continue;
    for (let one: Element | null = found; one; one = one.parentElement) {
      const { position } = getComputedStyle(one);
      if (position !== "fixed" && position !== "sticky") continue;
      const { top, height } = one.getBoundingClientRect();
      // A whole page that is held still is no bar.
      if (height < clientHeight / 3) return Math.max(0, clientHeight - top);
    }
  }
  return 0;
}

/** How far above the bottom of the window something has to stand to be above the keyboard and the page's own bars. */
export function liftOver(page: Document, own: Element): number {
  const { visualViewport, innerHeight } = page.defaultView!;
  const keyboard =
    visualViewport && visualViewport.scale === 1 ? innerHeight - visualViewport.height - visualViewport.offsetTop : 0;
  return Math.max(0, keyboard, barAt(page, own));
}
