// Changes calc's code in small ways, one at a time, and sees whether a test notices: npm run mutation runs it once a room.

/** The rooms of calc whose code is changed, and the folders of tests that have to notice. */
export const rooms = {
  exact: ["exact"],
  gears: ["gears", "fit", "layout", "counted"],
  stages: ["stages", "document", "evaluate"],
  drivetrain: ["stages", "document", "evaluate"],
  evaluate: ["stages", "document", "evaluate"],
  fit: ["gears", "fit", "layout", "counted"],
  layout: ["gears", "fit", "layout", "counted"],
  counted: ["gears", "fit", "layout", "counted", "motion"],
};

/** The room of this run. */
export const room = process.env.ROOM ?? "exact";

export default {
  mutate: [`packages/calc/src/${room}/**/*.ts`],
  testRunner: "vitest",
  plugins: ["@stryker-mutator/vitest-runner"],
  // Not by what a test imports: one whose imports are missing would be left out without a word.
  vitest: { configFile: "tests/mutation/vitest.config.ts", related: false },
  coverageAnalysis: "perTest",
  thresholds: { high: 95, low: 90, break: 90 },
  // What runs once, as a module loads, would need every test each time; tables of that sort are few and told by type.
  ignoreStatic: true,
  incrementalFile: `reports/mutation/${room}-last.json`,
  // Loops without an end are told by counting their steps. A busy machine must not count as noticed.
  timeoutMS: 30_000,
  // Not needed by calc's tests; what other tools keep in .cache may be no plain files. From the root on: folders of these names lie
  // elsewhere too.
  ignorePatterns: ["/.cache", "/dist", "/reports", "/demo", "/packages/{elements,figures,notebook}", "/tests/hosts"],
  reporters: ["json", "html", "progress-append-only"],
  jsonReporter: { fileName: `reports/mutation/${room}.json` },
  htmlReporter: { fileName: `reports/mutation/${room}.html` },
  concurrency: 2,
};
