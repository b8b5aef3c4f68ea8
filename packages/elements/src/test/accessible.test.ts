import { assert } from "@esm-bundle/chai";
import { define } from "../shared/element/index.js";
import { MwDriveLine } from "../elements/drive-line/index.js";
import { clear, countIn, find, press, settle, show, type, withLimpet } from "./page.js";

define(MwDriveLine);

interface Axe {
  run(root: Element): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }>;
}

// It puts itself into the window: it has no exports.
const load = async (): Promise<Axe> => {
  await new Promise((done) => {
    const script = document.createElement("script");
    script.src = "/node_modules/axe-core/axe.min.js";
    script.onload = done;
    document.head.append(script);
  });
  return (globalThis as unknown as { axe: Axe }).axe;
};

describe("the article's elements", () => {
  afterEach(clear);

  it("leave axe nothing to find: at rest, in use, after a refusal, with changes", async () => {
    const axe = await load();
    const page = await show(
      withLimpet(
        `<p>With <mw-teeth of="primary.driver">15</mw-teeth> to <mw-teeth of="primary.driven">62</mw-teeth>, <mw-teeth of="rear-ring">12 driving 35</mw-teeth>: ` +
          `<mw-value of="rear">43.32</mw-value>, <mw-value figure="standing" of="rear">inside</mw-value>.</p>` +
          `<mw-ratio-summary></mw-ratio-summary><mw-overdrive-gauge></mw-overdrive-gauge><mw-overdrive-gauge at="as-printed"></mw-overdrive-gauge>` +
          `<mw-drive-line chosen="row"></mw-drive-line><mw-drive-line still></mw-drive-line><mw-edits></mw-edits><mw-stage-editor></mw-stage-editor><mw-build id="other" stages="Pair: 0 to 1"></mw-build>`,
      ),
    );
    const violations = async (): Promise<string[]> =>
      (await axe.run(page)).violations.map(({ id, nodes }) => `${id}: ${nodes[0]!.html.slice(0, 100)}`);
    assert.deepEqual(await violations(), []);
    const count = countIn(find(page, "mw-teeth"));
    count.focus();
    press(count, "ArrowUp");
    await settle();
    assert.deepEqual(await violations(), []);
    type(count, "3.14");
    press(count, "Enter");
    await settle();
    assert.deepEqual(await violations(), []);
  });
});
