import { mkdirSync, mkdtempSync, readFileSync, realpathSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { run } from "../src/command.js";
import { help } from "../src/options.js";

const readme = readFileSync(new URL("../README.md", import.meta.url), "utf8");
const fence = (language: string) => new RegExp(`^\`\`\`${language}\\n([^]*?)^\`\`\``, "m").exec(readme)![1]!;

describe("the README", () => {
  const folder = realpathSync(mkdtempSync(join(tmpdir(), "figures-readme-")));
  const before = process.cwd();
  afterAll(() => {
    process.chdir(before);
    rmSync(folder, { recursive: true, force: true });
  });

  it("shows what the command says of its example", () => {
    mkdirSync(join(folder, "posts"));
    writeFileSync(join(folder, "posts/limpet.html"), fence("html"));
    process.chdir(folder);
    const shown = [...fence("console").matchAll(/^\$ npx figures (.*)\n([^$]*)/gm)];
    expect(shown).toHaveLength(2);
    for (const [, parameters, output] of shown) {
      const lines: string[] = [];
      run(parameters!.split(" "), (line) => lines.push(line));
      expect(lines.join("\n")).toBe(output!.trim());
    }
  });

  it("names every option and every exit status", () => {
    for (const [option] of help.matchAll(/--\w*/g)) expect(readme).toContain(`| \`${option}\``);
    for (const status of [0, 1, 2]) expect(readme).toMatch(new RegExp(`^\\| ${status} +\\|`, "m"));
  });
});
