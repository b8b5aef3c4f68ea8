// A change of calc's code is met by the tests of its own part: whatever runs as another program would not see it.
import { relative } from "node:path";
import { mergeConfig } from "vitest/config";
import { BaseSequencer, type TestSpecification } from "vitest/node";
import { room, rooms } from "../../stryker.config.js";
import shared from "../../vitest.config.js";

/** The longest that each file has taken in this process. */
const longest = new Map<string, number>();

/** Quick files first: most changes are noticed there, and then the slow ones need not run. */
class QuickFirst extends BaseSequencer {
  override sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const { cache, config } = this.ctx;
    const taken = ({ project, moduleId }: TestSpecification): number => {
      const key = `${project.name}:${relative(config.root, moduleId)}`;
      const time = Math.max(longest.get(key) ?? 0, cache.getFileTestResults(key)?.duration ?? 0);
      longest.set(key, time);
      return time;
    };
    return Promise.resolve(
      files
        .map((file) => [file, taken(file)] as const)
        .sort((a, b) => a[1] - b[1])
        .map(([file]) => file),
    );
  }
}

const folders = rooms[room as keyof typeof rooms].join(",");
const config = mergeConfig(shared, {});
config.test = {
  ...config.test,
  include: [`packages/calc/test/{${folders},}/**/*.test.ts`],
  // What compares our time with the engine's own would fail of the counting.
  exclude: ["**/hostile.test.ts"],
  setupFiles: ["tests/mutation/setup.ts"],
  sequence: { sequencer: QuickFirst },
  // Code that counts its own steps is slow; whatever runs for ever is ended from outside.
  testTimeout: 600_000,
};
export default config;
