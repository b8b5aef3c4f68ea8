/** A text as it stands in the window. */
interface Piece {
  readonly text: string;
  readonly box: DOMRect;
  readonly of: Element;
}

const isUnseen = (element: Element): boolean => {
  if (element.matches(".heard, [hidden], option, script, style, title, desc, .was, .strip, .tray")) return true;
  const { display, visibility, opacity } = getComputedStyle(element);
  return display === "none" || visibility === "hidden" || opacity === "0";
};

const childrenOf = (node: Node): Node[] => {
  if (node.nodeName === "SLOT") return (node as HTMLSlotElement).assignedNodes();
  return [...((node as Element).shadowRoot ?? node).childNodes];
};

/** All texts below a node, shadow roots included, each with the boxes of its lines. */
function piecesIn(node: Node, found: Piece[] = []): Piece[] {
  for (const child of childrenOf(node)) {
    if (child.nodeType === 3) {
      const text = child.textContent!.trim();
      if (!text) continue;
      const range = document.createRange();
      range.selectNodeContents(child);
      const of = child.parentElement ?? ((child.getRootNode() as ShadowRoot).host as Element);
      for (const box of range.getClientRects()) if (box.width > 0.5) found.push({ text, box, of });
    } else if (child.nodeType === 1 && !isUnseen(child as Element)) {
      const details = child as HTMLDetailsElement;
      if (child.nodeName === "DETAILS" && !details.open) piecesIn(details.querySelector("summary")!, found);
      else piecesIn(child, found);
    }
  }
  return found;
}

const short = (text: string): string => `“${text.replace(/\s+/g, " ").slice(0, 24)}”`;

/** Where a finger can go, by what it is called. */
function targetsIn(node: Node, found: { box: DOMRect; name: string; of: Element }[] = []): typeof found {
  for (const child of childrenOf(node)) {
    if (child.nodeType !== 1) continue;
    const element = child as HTMLElement;
    if (element.matches(".heard, [hidden], .strip, .tray") || getComputedStyle(element).display === "none") continue;
    const details = element as HTMLDetailsElement;
    const isTarget = element.matches("button, select, summary, input, textarea, a[href]");
    // A field that lies over its text is unseen, and is what is touched.
    const box = element.getBoundingClientRect();
    if (isTarget && box.width && box.height)
      found.push({ box, name: element.getAttribute("aria-label") ?? element.textContent!.trim(), of: element });
    else if (child.nodeName === "DETAILS" && !details.open) targetsIn(details.querySelector("summary")!, found);
    else targetsIn(child, found);
  }
  return found;
}

/** What a finger cannot hit for certain: smaller than 24 pixels, and nearer to another than 24 pixels are wide. */
function untouchable(element: Element): string[] {
  const targets = targetsIn(element);
  const isSmall = ({ width, height }: DOMRect): boolean => Math.min(width, height) < 23.5;
  return targets.flatMap(({ box, name }, n) => {
    const [x, y] = [box.left + box.width / 2, box.top + box.height / 2];
    return targets.flatMap((other, m) => {
      if (n === m) return [];
      const across = Math.min(box.right, other.box.right) - Math.max(box.left, other.box.left);
      const down = Math.min(box.bottom, other.box.bottom) - Math.max(box.top, other.box.top);
      if (n < m && across > 3 && down > 3) return [`${short(name)} and ${short(other.name)} are touched in one place`];
      if (!isSmall(box)) return [];
      const [dx, dy] = [
        Math.max(other.box.left - x, 0, x - other.box.right),
        Math.max(other.box.top - y, 0, y - other.box.bottom),
      ];
      return Math.hypot(dx, dy) < 11.5 ? [`${short(name)} is too near to ${short(other.name)} for a finger`] : [];
    });
  });
}

/** What is cut, sideways, or on top of another, one sentence each; nothing where all is well. */
export function faultsIn(element: Element, within: DOMRect): string[] {
  const pieces = piecesIn(element);
  const faults = new Set<string>();
  for (const { text, box, of } of pieces) {
    // The blank at which a line breaks may hang out of it.
    const { direction, fontSize } = getComputedStyle(of);
    const blank = /\s/.test(text) && !(of instanceof SVGElement) ? 0.35 * parseFloat(fontSize) : 0;
    const [left, right] = direction === "rtl" ? [blank, 0] : [0, blank];
    if (box.left < within.left - 1.5 - left || box.right > within.right + 1.5 + right)
      faults.add(
        `${short(text)} stands ${Math.round(Math.max(within.left - box.left, box.right - within.right))} px outside`,
      );
  }
  const scrolled = (node: Node): void => {
    for (const child of childrenOf(node)) {
      if (child.nodeType !== 1 || isUnseen(child as Element)) continue;
      const { scrollWidth, clientWidth } = child as HTMLElement;
      const { overflowX, display } = getComputedStyle(child as Element);
      if (
        display !== "inline" &&
        /auto|scroll|hidden|clip/.test(overflowX) &&
        clientWidth &&
        scrollWidth > clientWidth + 1
      )
        faults.add(
          `${(child as Element).localName}.${(child as Element).className} hides ${scrollWidth - clientWidth} px at its side`,
        );
      scrolled(child);
    }
  };
  scrolled(element);
  // By lines from above: only neighbours can meet.
  const lines = [...pieces].sort((a, b) => a.box.top - b.box.top);
  for (const [n, one] of lines.entries())
    for (let next = n + 1; next < lines.length && lines[next]!.box.top < one.box.bottom; next++) {
      const other = lines[next]!;
      const across = Math.min(one.box.right, other.box.right) - Math.max(one.box.left, other.box.left);
      const down = Math.min(one.box.bottom, other.box.bottom) - Math.max(one.box.top, other.box.top);
      // The boxes of lines are higher than what is written in them.
      const least = 0.35 * Math.min(one.box.height, other.box.height);
      if (across > 2 && down > least && one.text + one.of.localName !== other.text + other.of.localName)
        faults.add(`${short(one.text)} and ${short(other.text)} stand on each other`);
    }
  for (const fault of untouchable(element)) faults.add(fault);
  return [...faults].slice(0, 6);
}
