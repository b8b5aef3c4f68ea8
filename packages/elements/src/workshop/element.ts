import { MeshwrightElement } from "../base/index.js";
import { workshopWordsFor } from "./words.js";
import type { WorkshopWords } from "./en.js";

/** What the elements beyond the article's own are made from: one more table of strings. */
export abstract class WorkshopElement extends MeshwrightElement {
  protected get shop(): WorkshopWords {
    return workshopWordsFor(this.locale);
  }
}
