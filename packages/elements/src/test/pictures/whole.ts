import { product } from "./cover.js";
import { factors, tested } from "./drawn.js";

describe("nothing is cut, sideways or on top of another, in all that can come together:", () =>
  tested(product(factors)));
