import { afterAll, beforeAll, describe, it } from "vitest";
import type { Browser } from "puppeteer-core";
import { notebookBrowser } from "../notebook/page.js";
import { session } from "../notebook/sessions.js";
import { seed } from "./seed.js";

let browser: Browser;
let address: string;
let close: () => Promise<void>;

describe("the notebook, worked by chance", () => {
  beforeAll(async () => {
    ({ browser, address, close } = await notebookBrowser());
  });
  afterAll(() => close());

  it("loses nothing that is 300 ms old, and doubles nothing, in 500 sessions", async () => {
    for (let n = 0; n < 500; n++) {
      await session(browser, address, seed + n, 20);
      // Who waits for the better part of an hour may know how far it is.
      if (n % 50 === 49) process.stdout.write(`${n + 1} sessions\n`);
    }
  });
});
