// A change of calc's code is met by the tests of its own part: whatever runs as another program would not see it.
import { mergeConfig } from "vitest/config";
import shared from "../../vitest.config.js";

const folders = process.env.MUTATION_TESTS ?? "*";
const config = mergeConfig(shared, {});
config.test = { ...config.test, include: [`packages/calc/test/{${folders},}/**/*.test.ts`] };
export default config;
