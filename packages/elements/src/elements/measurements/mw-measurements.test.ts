import { assert } from "@esm-bundle/chai";
import "axe-core";
import type axeCore from "axe-core";
import { define } from "../../shared/element/index.js";
import type { MwBuild } from "../build/index.js";
import { clear, find, limpet, lineOf, settle, show } from "../../test/page.js";
import { MwMeasurements } from "./index.js";

define(MwMeasurements);
const { axe } = globalThis as unknown as { axe: typeof axeCore };

const measured = JSON.stringify({
  ...(JSON.parse(limpet) as object),
  measurements: [
    { what: "front", date: "2026-10-04", motorTurns: 40, wheelTurns: { from: "0.90", to: "0.91" } },
    { what: "rear", motorTurns: 40, wheelTurns: { from: "0.95", to: "0.96" } },
  ],
});
const build = `<mw-build id="limpet"><script type="application/json">${measured}</script></mw-build>`;

describe("mw-measurements", () => {
  let root: HTMLElement;
  const rows = () =>
    [...find(root, "mw-measurements").shadowRoot!.querySelectorAll("tbody tr")].map((row) =>
      [...row.children].map((cell) => (cell as HTMLElement).innerText.replace(/\s+/g, " ").trim()).join(" | "),
    );

  beforeEach(async () => {
    root = await show(`${build}<mw-measurements><p>Measured: 44.</p></mw-measurements>`, 320);
  });
  afterEach(clear);

  it("tells which agree, and which do not by how much; a swap that a reader makes since makes nothing wrong of it", async () => {
    // Rear: 31/3 · 35/12 · 23/16 = 43.3247; 40/0.95 = 42.105 is 2.81 % less.
    assert.deepEqual(rows(), [
      "Front Oct 4, 2026 | 40 in, 0.90 to 0.91 out | 43.95 to 44.45 | 44.30 | agrees",
      "Rear | 40 in, 0.95 to 0.96 out | 41.66 to 42.11 | 43.32 | disagrees: measured at least 2.81% less",
    ]);
    find<MwBuild>(root, "mw-build").store.change({ "primary.driver": 16 });
    await settle();
    assert.deepEqual(rows(), [
      "Front Oct 4, 2026. Measured with motor pinion: 15 | 40 in, 0.90 to 0.91 out | 43.95 to 44.45 | 44.30 | agrees",
      "Rear Measured with motor pinion: 15 | 40 in, 0.95 to 0.96 out | 41.66 to 42.11 | 43.32 | disagrees: measured at least 2.81% less",
    ]);
  });

  it("leaves axe nothing to find, and does not push a narrow page", async () => {
    const { violations } = await axe.run(root, { rules: { region: { enabled: false } } });
    assert.deepEqual(
      violations.map(({ id, nodes }) => `${id}: ${nodes[0]!.html}`),
      [],
    );
    assert.isAtMost(find(root, "mw-measurements").scrollWidth, 321);
  });

  it("keeps the author's words where there is no build", async () => {
    root = await show("<mw-measurements><p>In words.</p></mw-measurements>");
    assert.equal(lineOf(find(root, "mw-measurements")), "In words.");
  });
});
