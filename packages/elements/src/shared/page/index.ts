/**
 * Everything that a page may refuse: its address, the clipboard, markup. Nothing here throws.
 * @module
 */
export { isAuthorHere, isAuthorsPlace, lookFrom } from "./author.js";
export { copyText } from "./clipboard.js";
export { hashKey, linkWith, readHash, seekAnchor, writeHash, writeNow } from "./hash.js";
export { mayDraw, scriptAddress } from "./policy.js";
