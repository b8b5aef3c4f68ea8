// Terser in a thread of its own: it takes most of a build, and one script need not wait for another.
import { isMainThread, parentPort, Worker, workerData } from "node:worker_threads";
import { minify } from "terser";

/** Shorter code is done before a thread has started. */
const worthAThread = 100_000;

const shortened = async (code, options) => (await minify(code, options)).code;

/** The smallest code that does the same, by the options of Terser. What cannot be read is an error. */
export function minifiedBy(code, options) {
  if (code.length < worthAThread) return shortened(code, options);
  return new Promise((resolve, reject) => {
    const thread = new Worker(new URL(import.meta.url), { workerData: { code, options } });
    thread.once("message", resolve);
    thread.once("error", reject);
  });
}

if (!isMainThread && workerData?.code !== undefined) {
  const { code, options } = workerData;
  parentPort.postMessage(await shortened(code, options));
}
