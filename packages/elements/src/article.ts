/**
 * Registers what an article needs.
 * @module
 */
import { define } from "./shared/element/index.js";
import { watchFindings } from "./shared/findings/index.js";
import { makeWhole } from "./second/index.js";
import { MwBuild } from "./elements/build/index.js";
import { MwEdits } from "./elements/edits/index.js";
import { MwOverdriveGauge } from "./elements/overdrive-gauge/index.js";
import { MwRatioSummary } from "./elements/ratio-summary/index.js";
import { MwTeeth } from "./elements/teeth/index.js";
import { MwValue } from "./elements/value/index.js";

watchFindings();
makeWhole();
define(MwBuild, MwTeeth, MwValue, MwRatioSummary, MwOverdriveGauge, MwEdits);
