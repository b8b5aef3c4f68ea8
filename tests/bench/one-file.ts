// The same article as one script: what its two files are compared with.
import { MwBuild } from "../../packages/elements/src/elements/build/index.js";
import { MwTeeth } from "../../packages/elements/src/elements/teeth/index.js";
import { MwValue } from "../../packages/elements/src/elements/value/index.js";
import { makeReady } from "../../packages/elements/src/second/index.js";
import { define } from "../../packages/elements/src/shared/element/index.js";

makeReady();
define(MwBuild, MwTeeth, MwValue);
