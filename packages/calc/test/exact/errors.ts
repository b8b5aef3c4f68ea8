import { expect } from "vitest";
import { MeshwrightError } from "../../src/exact/index.js";

/** Expects the typed error, with its sentence of what was found and what is expected. */
export function refuses(action: () => unknown, code: string, at: string, sentence?: string): void {
  let error: unknown;
  try {
    action();
  } catch (thrown) {
    error = thrown;
  }
  expect(error).toBeInstanceOf(MeshwrightError);
  const { code: foundCode, at: foundAt, message, name } = error as MeshwrightError;
  expect({ code: foundCode, at: foundAt, name }).toEqual({ code, at, name: "MeshwrightError" });
  expect(message).toMatch(/^Found .+; expected .+\.$/);
  if (sentence !== undefined) expect(message).toBe(sentence);
}
