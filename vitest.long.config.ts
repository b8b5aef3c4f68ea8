// npm run test:long: tests that take too long for npm test, from a seed that is printed. SEED=number repeats a run.
import { mergeConfig } from "vitest/config";
import Counts from "./scripts/lib/counts.js";
import shared from "./vitest.config.js";

const seed = process.env.SEED ?? String(Date.now() % 2 ** 31);
const config = mergeConfig(shared, {});
config.test = {
  ...config.test,
  include: ["tests/long/**/*.test.ts"],
  exclude: ["**/node_modules/**"],
  globalSetup: "tests/long/told.ts",
  setupFiles: ["tests/long/seed.ts"],
  env: { SEED: seed },
  testTimeout: 3_600_000,
  reporters: ["minimal", new Counts()],
};
export default config;
