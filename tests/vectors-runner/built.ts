import { at } from "../../scripts/lib/paths.js";
import { runNode } from "../../scripts/lib/run.js";

/** Builds calc where that is stale. */
export default async function built(): Promise<void> {
  // A process of its own: what is built for a test environment is another thing than what is published.
  const { code, output } = await runNode(at("scripts", "build.js"), ["--if-stale", "calc"], { env: { NODE_ENV: "" } });
  if (code !== 0) throw new Error(output);
}
