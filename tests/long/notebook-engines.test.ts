import type { AddressInfo } from "node:net";
import { afterAll, beforeAll, describe, it } from "vitest";
import { EngineHands, engineCalled, type Engine } from "../notebook/engine-hands.js";
import { demoServer } from "../notebook/page.js";
import { aYearLater, toFirstTotals, toOrderAndCard, toPost } from "../notebook/whole-way.js";

// From an empty notebook to a post and back to it a year later, in every engine: with the pointer, and by the keyboard alone.

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

describe.each(["chromium", "firefox", "webkit"] as const)("the notebook in %s", (name) => {
  let engine: Engine;
  beforeAll(async () => {
    engine = await engineCalled(name);
  });
  afterAll(() => engine?.stop());

  it.each([
    ["with the pointer", false],
    ["by the keyboard alone", true],
  ])("leads the whole way %s", async (_, byKeys) => {
    const opened = await engine.open(`${address}notebook/?new`, { width: 1280, height: 900 });
    const hands = new EngineHands(opened, byKeys);
    await toFirstTotals(hands);
    await toOrderAndCard(hands);
    await aYearLater(hands, address, await toPost(hands));
  });
});
