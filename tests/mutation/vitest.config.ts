// Mutations are met by calc's own tests only: whatever runs as a program of its own would not see them.
import { defineConfig, mergeConfig } from "vitest/config";
import shared from "../../vitest.config.js";

const config = mergeConfig(shared, defineConfig({}));
config.test = { ...config.test, include: ["packages/calc/test/**/*.test.ts"] };
export default config;
