import * as article from "@meshwright/calc/article";

/** What stands inside an element, as calc looks at it. */
const contentOf = (element: Element): readonly article.Content[] =>
  [...element.childNodes].flatMap((node) =>
    node.nodeType === 1
      ? {
          tag: node.nodeName.toLowerCase(),
          text: node.textContent!,
          holds: (node as Element).firstElementChild !== null,
        }
      : node.nodeType === 3
        ? { tag: "", text: node.textContent! }
        : [],
  );

/** Whether the content of an inline element stands for its value. */
export const standsForValue = (element: Element, value: string): boolean =>
  article.standsForValue(contentOf(element), value);

/** Whether the content of a block element stands for it. */
export const standsForBlock = (element: Element): boolean => article.standsForBlock(contentOf(element));
