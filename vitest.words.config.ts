// npm run test:words: every word of every closed table with every slip of one letter, in calc and by the command.
import { mergeConfig } from "vitest/config";
import Counts from "./scripts/lib/counts.js";
import shared from "./vitest.config.js";

const config = mergeConfig(shared, {});
config.test = {
  ...config.test,
  include: ["tests/words/**/*.test.ts"],
  exclude: ["**/node_modules/**"],
  reporters: ["minimal", new Counts()],
};
export default config;
