const settled = 700;
let region: HTMLElement | undefined;
let timer: ReturnType<typeof setTimeout> | undefined;

/** An element that shows why it has not taken what it was given. */
interface Refusing {
  message?: unknown;
}

/**
 * Says something to those who listen, once things have settled: one voice for the page, inside the element that was used. What
 * another one has refused is shown no more.
 */
export function announce(root: ShadowRoot, text: () => string): void {
  if (region?.parentNode !== root) {
    const before = (region?.parentNode as ShadowRoot | null | undefined)?.host as (Element & Refusing) | undefined;
    if (before?.message) before.message = undefined;
    region?.remove();
    region = root.ownerDocument.createElement("span");
    region.className = "heard";
    region.setAttribute("role", "status");
    root.append(region);
  }
  clearTimeout(timer);
  timer = setTimeout(() => {
    if (root.host.isConnected) region!.textContent = text();
  }, settled);
}
