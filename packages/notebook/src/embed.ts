/**
 * What `embed.html` runs: one drivetrain out of the page's own address, for hosts that allow frames and no scripts.
 * @module
 */
import "@meshwright/elements/all";
import { MwFrame } from "./embed/index.js";

if (!customElements.get(MwFrame.tag)) customElements.define(MwFrame.tag, MwFrame);
