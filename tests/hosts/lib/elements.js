// A page with every element that the library registers.
import { article, limpet } from "./snippets.js";

export const wholeBuild = `<mw-build id="whole"><script type="application/json">${JSON.stringify(limpet).replaceAll("<", "\\u003c")}</script></mw-build>`;

/** One element of every kind, with a fallback inside, about the whole build. */
export const blocks = [
  ["mw-ratio-summary", "<table><tr><th>Front<td>44.30</table>"],
  ["mw-overdrive-gauge", "<p>The front rolls 1.06 % farther.</p>"],
  ["mw-change-table", "<table><tr><th>Front<td>44.30</table>"],
  ["mw-train-drawing", "<p>Pinion 15, spur 62.</p>"],
  ["mw-drive-line", "<p>15 to 62, 18 to 31 to 45</p>"],
  ["mw-wheel-speed", "<p>12.3 km/h</p>"],
  ["mw-working", "<p>62/15 × 45/18</p>"],
  ["mw-edits", "", "limpet"],
]
  .map(([tag, inside, build = "whole"]) => `<${tag} build="${build}">${inside}</${tag}>`)
  .join("\n");

export const everyElement = `${wholeBuild}${blocks}<div>${article}</div>`;
