import type { AddressInfo } from "node:net";
import { setTimeout as later } from "node:timers/promises";
import { afterAll, beforeAll, describe, it } from "vitest";
import { EngineHands, engineCalled, type Engine } from "./engine-hands.js";
import { demoServer } from "./page.js";
import { toFirstTotals } from "./whole-way.js";

// The beginning of the way in every engine, one way of working in each; the whole of it, both by pointer and by keys, is in test:long.

const server = demoServer();
let address: string;

beforeAll(async () => {
  await new Promise<void>((done) => server.listen(0, "127.0.0.1", done));
  address = `http://127.0.0.1:${(server.address() as AddressInfo).port}/`;
});
afterAll(() => {
  server.close();
  server.closeAllConnections();
});

describe.each([
  ["chromium", true],
  ["firefox", true],
  ["webkit", false],
] as const)("the notebook in %s", (name, byKeys) => {
  let engine: Engine;
  beforeAll(async () => {
    engine = await engineCalled(name);
  });
  afterAll(() => engine?.stop());

  it(`leads to first totals ${byKeys ? "by the keyboard alone" : "with the pointer"}, and has kept them after a reload`, async () => {
    const opened = await engine.open(`${address}notebook/?new`, { width: 1280, height: 900 });
    const hands = new EngineHands(opened, byKeys);
    await toFirstTotals(hands);
    await hands.until(/Saved in this browser only/);
    const here = await hands.page.url();
    await hands.page.go(`${address}limpet.svg`);
    await hands.page.go(here);
    await hands.until(/Front 34\.20 to 35\.40, rear 38\.00 to 39\.34/);
    if (!byKeys) return;
    // A list that is closed is gone through with arrows: nothing is carried out before Enter.
    await hands.reach("combobox", "Let something in");
    for (let n = 0; n < 3; n++) await hands.page.press("ArrowDown");
    await later(200);
    if (/What is there\?/.test(await hands.text())) throw new Error("An arrow key has let something in.");
    await hands.page.press("Enter");
    await hands.until(/What is there\?/);
  });
});
