import { defineConfig } from "vitest/config";

// npm run test:packed: the tarballs in other people's frameworks and runtimes. Installs from a registry, and takes minutes.
export default defineConfig({
  test: {
    include: ["tests/packed/**/*.test.ts"],
    environment: "node",
    fileParallelism: false,
    testTimeout: 600_000,
    hookTimeout: 600_000,
  },
});
