import { standsForValue as stands, type Content } from "@meshwright/calc/article";

/** What stands inside an element, as calc looks at it. */
export const contentOf = (element: Element): readonly Content[] =>
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
export const standsForValue = (element: Element, value: string): boolean => stands(contentOf(element), value);
