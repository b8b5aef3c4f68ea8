/**
 * What comes third, where a page needs it: reading in full and what is wrong, links, changes of structure, tables, figures of fit, speed and torque.
 * @module
 */
import { MwEdits } from "./elements/edits/index.js";
import { MwOverdriveGauge } from "./elements/overdrive-gauge/index.js";
import { MwRatioSummary } from "./elements/ratio-summary/index.js";
import { define } from "./shared/element/index.js";
import { makeWhole } from "./third/index.js";

makeWhole();
define(MwRatioSummary, MwOverdriveGauge, MwEdits);
