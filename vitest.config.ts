import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";

const packages = fileURLToPath(new URL("./packages/", import.meta.url));

export default defineConfig({
  resolve: {
    alias: [
      { find: /^@meshwright\/calc$/, replacement: `${packages}calc/src/index.ts` },
      { find: /^@meshwright\/calc\/(languages\/.+)$/, replacement: `${packages}calc/src/$1.ts` },
      { find: /^@meshwright\/calc\/(\w+\/lean)$/, replacement: `${packages}calc/src/$1/index.ts` },
      { find: /^@meshwright\/calc\/(\w+)$/, replacement: `${packages}calc/src/$1/index.ts` },
      { find: /^@meshwright\/elements\/(all|article)$/, replacement: `${packages}elements/src/$1.ts` },
      {
        find: /^@meshwright\/elements\/(store|tools|words)$/,
        replacement: `${packages}elements/src/shared/$1/index.ts`,
      },
      { find: /^@meshwright\/elements\/([\w-]+)$/, replacement: `${packages}elements/src/elements/$1/index.ts` },
      { find: /^@meshwright\/(elements|figures)$/, replacement: `${packages}$1/src/index.ts` },
    ],
  },
  test: {
    include: ["packages/*/test/**/*.test.ts", "tests/**/*.test.{ts,js}"],
    // Rows of other people's software have a runner of their own: npm run test:hosts.
    exclude: [
      ...[
        "**/node_modules/**",
        "tests/hosts/**",
        "tests/systems/**",
        "tests/vectors-runner/vectors.test.ts",
        "tests/long/**",
      ],
      "tests/words/**",
      // What installs frameworks: npm run test:packed.
      "tests/packed/frameworks.test.ts",
    ],
    environment: "node",
    // The runner itself has next to nothing to do: its core is free for tests as well.
    maxWorkers: "100%",
    // What hangs is given up. How long a test may take is no test's affair: a small machine does other work as well.
    testTimeout: 300_000,
    hookTimeout: 300_000,
    coverage: {
      provider: "v8",
      include: ["packages/calc/src/**/*.ts"],
      reporter: ["text-summary", "json-summary"],
      reportsDirectory: "reports/coverage",
      // Files that came into article, document and search of late are tested in the page alone: what has 98, keeps it.
      thresholds: {
        branches: 95,
        "packages/calc/src/{exact,gears,drivetrain,evaluate,fit,layout,counted,motion,parts,languages}/**": {
          branches: 98,
        },
      },
    },
  },
});
