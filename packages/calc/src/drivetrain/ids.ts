import { shapes } from "./shapes.js";

/** What an address or a version may be called beside the ids of a document. */
const reserved = /^(?:article|mean|revision-\d+)$/;

/**
 * Whether an id cannot be given: it names the document's own keys, the article, the mean of two axles or a revision.
 *
 * @example
 * isReserved("battery"); // => true
 * isReserved("revision-2"); // => true
 * isReserved("front"); // => false
 */
export const isReserved = (id: string): boolean => reserved.test(id) || Object.hasOwn(shapes.build!, id);
