import { pairwise } from "./cover.js";
import { factors, tested } from "./drawn.js";

// Nothing is cut, sideways, or on top of another, whatever comes together: any two of element, width, size of text, language,
// build, place and state. All of it in one engine; of the others, whose letters are wider, every third. The product is a long
// test.
const isChromium = /Chrom(e|ium)\//.test(navigator.userAgent);
describe("nothing is cut, sideways or on top of another:", () =>
  tested(pairwise(factors, 7).filter((_, n) => isChromium || n % 3 === 0)));
