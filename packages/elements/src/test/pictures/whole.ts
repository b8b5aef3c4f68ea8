import { product } from "./cover.js";
import { factors, tested } from "./drawn.js";

// A part of it in each run, "3/12" by the page: every twelfth combination, from the third on.
const [part, parts] = (globalThis as unknown as { part: string }).part.split("/").map(Number) as [number, number];

describe("nothing is cut, sideways or on top of another, in all that can come together:", () =>
  tested(product(factors).filter((_, n) => n % parts === part - 1)));
