const settled = 700;
let region: HTMLElement | undefined;
let timer: ReturnType<typeof setTimeout> | undefined;

/**
 * Says something to those who listen, once things have settled: one voice for the page, inside the element that was used.
 */
export function announce(root: ShadowRoot, text: () => string): void {
  if (region?.parentNode !== root) {
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
