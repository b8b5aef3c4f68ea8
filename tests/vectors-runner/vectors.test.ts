// Answers every case of tests/vectors, or of the folder in VECTORS, with the built calc: npm run test:vectors.
import { resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { it } from "vitest";
import { casesIn } from "./cases.js";

const folder = resolve(process.env.VECTORS ?? fileURLToPath(new URL("../vectors/", import.meta.url)));

it.each(await casesIn(folder))("$title", ({ trouble }) => {
  const lines = trouble();
  if (lines.length === 0) return;
  const error = new Error(lines.join("\n"));
  delete error.stack; // where this file noticed says nothing
  throw error;
});
