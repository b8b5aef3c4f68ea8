import { define as register, type ElementClass } from "../shared/element/index.js";
import { makeWhole } from "./whole.js";

/** Registers elements under their own names, with all that they need: see `define` in the element room. */
export function define(...classes: readonly ElementClass[]): void {
  makeWhole();
  register(...classes);
}
