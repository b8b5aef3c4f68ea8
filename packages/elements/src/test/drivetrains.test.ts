import { assert } from "@esm-bundle/chai";
import { define } from "../third/index.js";
import { MwBenchCard } from "../elements/bench-card/index.js";
import type { MwBuild } from "../elements/build/index.js";
import { MwCountFinder } from "../elements/count-finder/index.js";
import { MwChangeTable } from "../elements/change-table/index.js";
import { MwOrderList } from "../elements/order-list/index.js";
import { MwPairFinder } from "../elements/pair-finder/index.js";
import { MwTrainDrawing } from "../elements/train-drawing/index.js";
import { MwWorking } from "../elements/working/index.js";
import { clear, find, lineOf, settle, show } from "./page.js";

define(MwPairFinder, MwCountFinder, MwOrderList, MwBenchCard, MwTrainDrawing, MwChangeTable, MwWorking);

// Odd drivetrains, each from an empty page through finder, order and card. After each pair that is taken all elements have to
// say the same, to the last digit.
interface Drivetrain {
  readonly look: readonly string[];
  readonly build: {
    readonly outputs: readonly { readonly id: string; readonly label: string }[];
    readonly mounts?: readonly { readonly stage: string }[];
  };
}

const names = [
  "whelk-mixed-pitch",
  "limpkin-worm-by-turns",
  "stonechat-chain-and-hubs",
  "sanderling-six-wheels",
  "avocet-two-motors-inches",
  "godwit-transfer-case",
  "knot-two-levers",
  "oystercatcher-planetary-hubs",
  "plover-same-printed-hub",
  "dunlin-ring-and-cycloid",
];

const read = async (name: string): Promise<Drivetrain> => {
  const file = new URL(`../../../../tests/drivetrains/${name}.json`, import.meta.url);
  return (await (await fetch(file)).json()) as Drivetrain;
};

const plain = (node: Element): string => lineOf(node).replaceAll("\u00a0", " ");

const until = async (question: () => boolean): Promise<void> => {
  while (!question()) await settle(1);
};

/** The cells of a table's row that begins with a head. */
function cells(element: Element, head: string): string[] {
  const rows = [...element.shadowRoot!.querySelectorAll("tr")];
  const row = rows.find((one) => plain(one.cells[0]!) === head);
  assert.isDefined(row, `${element.localName}: ${head} in ${plain(element)}`);
  return [...row!.cells].slice(1).map(plain);
}

describe("odd drivetrains", () => {
  afterEach(clear);

  for (const name of names)
    it(`${name}: finder, order, card and all figures agree after each pair that is taken`, async () => {
      const { build, look } = await read(name);
      for (const stage of look) {
        const isMounted = !!build.mounts?.some((mount) => mount.stage === stage);
        const page = await show(
          `<mw-build id="odd"><script type="application/json">${JSON.stringify(build)}</script></mw-build>
          <mw-pair-finder of="${stage}"></mw-pair-finder><mw-ratio-summary></mw-ratio-summary><mw-working></mw-working>
          <mw-train-drawing of="${stage}"></mw-train-drawing><mw-order-list></mw-order-list><mw-bench-card></mw-bench-card>
          <mw-change-table></mw-change-table>
          ${build.outputs.map(({ id }) => `<mw-value class="total" figure="reduction" drive="straight-on" of="${id}"></mw-value> <mw-value class="standing" figure="standing" of="${id}"></mw-value>`).join("")}
          ${isMounted ? `<mw-value id="fit" figure="fit" of="${stage}"></mw-value><mw-value id="centre" figure="centre" of="${stage}"></mw-value>` : ""}`,
        );
        const one = (tag: string) => find(page, tag);
        const finder = one("mw-pair-finder");
        const root = finder.shadowRoot!;
        const { store } = find<MwBuild>(page, "mw-build");
        await until(() => /reach(es)? the range/.test(lineOf(finder)));
        for (let more; (more = root.querySelector<HTMLElement>("button.more-pairs"));) {
          more.click();
          await settle(1);
        }
        const heads = plain(find(root, "thead th:nth-child(2)")).split(" · ");
        const rows = () => [...root.querySelectorAll("tbody.hit")];
        const keyOf = (row: Element) => plain(find(row, "th")) + plain(find(row, ".quiet"));
        const keys = rows().map(keyOf);
        assert.isAtLeast(keys.length, 2, stage);
        for (const key of keys) {
          const row = () => rows().find((each) => keyOf(each) === key)!;
          const [counts, totals, centre, price] = [...row().querySelectorAll("tr:first-child > *")].map(plain) as [
            string,
            string,
            string,
            string,
          ];
          const told = plain(find(row(), ".words"));
          find(row(), "button").click();
          await settle(1);
          const where = `${stage} ${counts}`;
          // What the finder says of the pair is what it says of it afterwards.
          assert.deepEqual(
            [...row().querySelectorAll("tr:first-child > *")].slice(0, 4).map(plain),
            [counts, totals, centre, price],
            where,
          );
          assert.equal(find(row(), "button").getAttribute("aria-disabled"), "true", where);
          const values = [...page.querySelectorAll("mw-value.total")].map((value) =>
            plain(value).replace(/ \(.*\)$/, ""),
          );
          const labels = build.outputs.map(({ label }) => label);
          assert.deepEqual(
            totals.split(" · "),
            heads.map((head) => values[labels.indexOf(head)]),
            where,
          );
          for (const [n, label] of labels.entries()) {
            if (heads.includes(label))
              assert.match(plain(page.querySelectorAll("mw-value.standing")[n]!), /^inside/, where);
            assert.include(plain(one("mw-ratio-summary")), values[n]!, where);
            assert.include(plain(one("mw-working")), values[n]!, where);
            assert.equal(
              cells(one("mw-change-table"), label)[1]!.replace(/ (inside|too|cannot).*$/, ""),
              values[n],
              where,
            );
          }
          for (const tag of ["mw-ratio-summary", "mw-bench-card"]) assert.include(plain(one(tag)), counts, where);
          if (isMounted) {
            assert.equal(plain(one("#fit")), "fits", where);
            assert.equal(plain(one("#centre")), centre, where);
            assert.include(plain(one("mw-bench-card")), centre, where);
            const set = / Set at ([^,]*),/.exec(told)?.[1] ?? centre;
            assert.include(plain(one("mw-train-drawing")), set, where);
          }
          assert.notMatch(plain(one("mw-bench-card")) + plain(one("mw-order-list")), /does not fit|too far|too close/);
          const order = one("mw-order-list");
          const bought = order.shadowRoot!.querySelector(".total .sum");
          assert.equal(/^(Owned|Stays)/.test(price) ? undefined : price, bought ? plain(bought) : undefined, where);
          const cost = cells(one("mw-change-table"), "To buy")[1];
          assert.equal(cost === "–" ? "Stays" : cost, price, where);
          assert.equal(/Nothing to buy/.test(plain(order)), /^(Owned|Stays)/.test(price), where);
          store.undo();
          store.reset();
          await settle(1);
          assert.deepEqual(store.layer.sets, {});
        }
      }
    });

  for (const name of names)
    it(`${name}: every count, set and tyre that is found for a total gives it once it is taken`, async () => {
      const { build } = await read(name);
      const { id } = build.outputs[0]!;
      const page = await show(
        `<mw-build id="odd"><script type="application/json">${JSON.stringify(build)}</script></mw-build>
        <mw-count-finder output="${id}"></mw-count-finder>
        ${["reduction", "travel", "lead"].map((figure) => `<mw-value class="${figure}" figure="${figure}" of="${id}" ${figure === "lead" ? "" : 'drive="straight-on"'}></mw-value>`).join("")}`,
      );
      const finder = find(page, "mw-count-finder");
      const root = finder.shadowRoot!;
      const { store } = find<MwBuild>(page, "mw-build");
      const enter = async (field: string, value: string) => {
        const control = find<HTMLInputElement>(root, `[name="${field}"]`);
        control.value = value;
        control.dispatchEvent(new Event("change", { bubbles: true }));
        await settle(1);
      };
      const options = (field: string) =>
        [...root.querySelectorAll(`select[name="${field}"] option`)] as HTMLOptionElement[];
      const places = options("of").map(({ value }) => value);
      assert.isAtLeast(places.length, 2);
      let taken = 0;
      for (const figure of options("figure")
        .map(({ value }) => value)
        .filter((value) => value !== "speed"))
        for (const place of places) {
          await enter("figure", figure);
          await enter("of", place);
          // Somewhere else than where it stands.
          if (figure === "lead") await enter("want", "3.3%");
          else
            await enter(
              "want",
              find<HTMLInputElement>(root, '[name="want"]').value.replace(/^\d+/, (whole) => String(Number(whole) + 1)),
            );
          const count = root.querySelectorAll("tbody tr").length;
          for (let n = 0; n < count; n++) {
            const row = () => root.querySelectorAll("tbody tr")[n] as HTMLTableRowElement;
            const gives = plain(row().cells[1]!);
            find(row(), "button").click();
            await settle(1);
            // What has to be told of it stands in the head.
            const [value, ...remarks] = plain(find(page, `mw-value.${figure}`)).split(/, (?=locked|gears)/);
            assert.equal(value, gives, `${place} ${figure}`);
            const head = plain(find(root, "thead th:nth-child(2)"));
            for (const remark of remarks) assert.include(head, remark);
            taken++;
            store.reset();
            await settle(1);
          }
        }
      assert.isAtLeast(taken, 2);
    });
});
