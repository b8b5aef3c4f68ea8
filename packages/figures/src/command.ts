#!/usr/bin/env node
import { readFileSync, realpathSync, writeFileSync } from "node:fs";
import { dirname, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { checkFigures, mendFigures, type Difference } from "./check.js";

const usage = `figures FILE… [--write]

Compares the figures that stand in HTML or Markdown files with what their builds
come to. Differences are listed with their lines; exit status 1.
  --write   mends them; every other byte stays as it was
`;

/** Reads a file as the text that it is, or says why it cannot. */
const readText = (file: string): string =>
  new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(readFileSync(file));

const lineOf = (file: string, { line, column, element, message }: Difference): string =>
  `${file}:${line}:${column} ${element} ${message}`;

/** The command: answers its exit status. 0: nothing stale. 1: something was. 2: it could not be told. */
export function run(parameters: readonly string[], say: (line: string) => void = console.log): number {
  const files = parameters.filter((one) => !one.startsWith("-"));
  const unknown = parameters.filter((one) => one.startsWith("-") && one !== "--write");
  if (!files.length || unknown.length) {
    say(unknown.length ? `Unknown option ${unknown[0]}.\n${usage}` : usage);
    return 2;
  }
  const write = parameters.includes("--write");
  let status = 0;
  let compared = 0;
  let stale = 0;
  for (const file of files) {
    try {
      const source = readText(file);
      const load = (src: string): string | undefined => {
        try {
          return /^[a-z]+:|^\/\//i.test(src) ? undefined : readText(resolve(dirname(file), src.replace(/[?#].*$/, "")));
        } catch {
          return undefined;
        }
      };
      const options = { markdown: /\.(md|mdx|markdown)$/i.test(file), load };
      const checked = checkFigures(source, options);
      compared += checked.compared;
      stale += checked.differences.length;
      let { differences } = checked;
      if (write && differences.length) {
        const { text, left, mended } = mendFigures(source, options);
        if (text !== source) writeFileSync(file, text);
        if (mended) say(`${file}: ${mended} mended`);
        differences = left;
      }
      for (const difference of differences) say(lineOf(file, difference));
      if (differences.length) status = Math.max(status, 1);
    } catch (error) {
      say(`${file}: ${(error as Error).message}`);
      status = 2;
    }
  }
  say(`${compared} figures compared, ${stale} stale`);
  return status;
}

if (process.argv[1] && fileURLToPath(import.meta.url) === realpathSync(process.argv[1]))
  process.exitCode = run(process.argv.slice(2));
