/** What of a text is said: spaces of any kind are one, and a minus is a hyphen; what nobody sees is left out. */
const bare = (text: string): string =>
  text
    .normalize("NFKC")
    .replace(/[\u00ad\u200b-\u200f\u2060\ufeff]/g, "")
    .replace(/\u2212/g, "-")
    .replace(/\s+/g, " ")
    .trim();

/** Whether two texts say the same to whoever reads them. */
export const sameText = (one: string, other: string): boolean => one === other || bare(one) === bare(other);

/** The text that the author wrote inside an element. */
export const authorsText = (element: Element): string => element.textContent ?? "";

/** Whether something has been put around the text by what translates or reads a page aloud. */
export const isWrapped = (element: Element): boolean => element.querySelector("font") !== null;
