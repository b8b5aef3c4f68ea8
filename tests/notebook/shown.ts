/** In the page: all that it shows. */
export function shown(): string {
  const read = (node: Node): string => {
    if (node instanceof HTMLElement && getComputedStyle(node).display === "none") return "";
    if (node instanceof Text) return node.data;
    if (node instanceof HTMLStyleElement || node instanceof HTMLScriptElement) return "";
    if (node instanceof HTMLInputElement) return ` ${node.value} `;
    if (node instanceof HTMLSlotElement) return node.assignedNodes().map(read).join("");
    const inside = [...((node as Element).shadowRoot ?? node).childNodes].map(read).join("");
    return /^(P|DIV|LI|TR|TD|TH|H\d|SECTION)$/.test(node.nodeName) ? ` ${inside} ` : inside;
  };
  return read(document.body).replace(/\s+/g, " ");
}
