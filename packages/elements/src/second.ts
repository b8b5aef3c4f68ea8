/**
 * What an article's second file brings.
 * @module
 */
import { MwEdits } from "./elements/edits/index.js";
import { MwOverdriveGauge } from "./elements/overdrive-gauge/index.js";
import { MwRatioSummary } from "./elements/ratio-summary/index.js";
import { define } from "./shared/element/index.js";
import { makeWhole } from "./second/index.js";

makeWhole();
define(MwRatioSummary, MwOverdriveGauge, MwEdits);
