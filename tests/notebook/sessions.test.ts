import type { Browser } from "puppeteer-core";
import { afterAll, beforeAll, describe, it } from "vitest";
import { notebookBrowser } from "./page.js";
import { session } from "./sessions.js";

let browser: Browser;
let address: string;
let close: () => Promise<void>;

describe("sessions by chance", () => {
  beforeAll(async () => {
    ({ browser, address, close } = await notebookBrowser());
  });
  afterAll(() => close());

  it.each(Array.from({ length: 20 }, (_, n) => n + 1))(
    "lose nothing that is 300 ms old, and double nothing: %i",
    (seed) => session(browser, address, seed, 8),
    120_000,
  );
});
