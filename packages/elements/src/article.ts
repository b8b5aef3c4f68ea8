/**
 * Registers what an article begins with: its build, counts and figures. All else follows once the page has loaded, or somebody
 * needs it.
 * @module
 */
import { MwBuild } from "./elements/build/index.js";
import { MwTeeth } from "./elements/teeth/index.js";
import { MwValue } from "./elements/value/index.js";
import { loadMore } from "./load-more.js";
import { define } from "./shared/element/index.js";
import { later } from "./later.js";

define(MwBuild, MwTeeth, MwValue);
later(loadMore, MwBuild);
