// npm run test:vectors: one test a case, against the built calc, as its users have it.
import { defineConfig } from "vitest/config";
import Counts from "./scripts/lib/counts.js";

export default defineConfig({
  test: {
    include: ["tests/vectors-runner/vectors.test.ts"],
    globalSetup: "tests/vectors-runner/built.ts",
    environment: "node",
    reporters: ["minimal", new Counts()],
  },
});
