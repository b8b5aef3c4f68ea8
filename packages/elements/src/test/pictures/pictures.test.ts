import { pairwise } from "./cover.js";
import { factors, tested } from "./drawn.js";

// Nothing is cut, sideways, or on top of another, whatever comes together: any two of element, width, size of text, language,
// build, place and state, a part of them here; the product is a long test.
describe("nothing is cut, sideways or on top of another:", () => tested(pairwise(factors, 7)));
