import * as article from "@meshwright/calc/article";
import { contentOf } from "../element/index.js";

/** Whether the content of a block element stands for it. */
export const standsForBlock = (element: Element): boolean => article.standsForBlock(contentOf(element));
