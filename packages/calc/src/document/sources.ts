import { findingOf, type Finding } from "../stages/index.js";
import { speaksOfBuild } from "./notation-names.js";
import { isPagesOwn } from "./pages-own.js";

/**
 * What stands on an `mw-build` beside the source that its build is read from, and is not read: of `json`, a script inside,
 * `src` and the notation, the first that is there is the build.
 *
 * @param names the element's attributes, and what a program gave it as a property
 *
 * @example
 * passedOver(["src", "front"], false)[0]!.message; // => "The build is read from src; front beside it is passed over."
 */
export function passedOver(names: Iterable<string>, hasScript: boolean): Finding[] {
  const all = [...names];
  const whole = ["json", ...(hasScript ? ["script"] : []), "src"].filter(
    (one) => one === "script" || all.includes(one),
  );
  const [used] = whole;
  if (used === undefined) return [];
  const notation = all.filter((name) => speaksOfBuild(name) && !isPagesOwn(name));
  const others = [...whole.slice(1).map((one) => [one]), ...(notation.length ? [notation] : [])];
  return others.map((found) => {
    const [name] = found;
    return findingOf("warning", "meaning", "source-passed-over", name === "script" ? "" : `/${name}`, { used, found });
  });
}
