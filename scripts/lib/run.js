// Running other programs.
import { spawn } from "node:child_process";
import { readFileSync } from "node:fs";
import { at, root } from "./paths.js";

/**
 * Runs a program to its end.
 * `show`: its output goes to our standard error as it comes (standard output belongs to the script that was called);
 * otherwise it is only collected. Resolves to `{ code, output }`; a program that cannot start has code 127.
 */
export function run(command, args, { show = false, env = {}, cwd = root } = {}) {
  return new Promise((resolve) => {
    const child = spawn(command, args, { cwd, env: { ...process.env, ...env }, stdio: ["ignore", "pipe", "pipe"] });
    let output = "";
    const take = (text) => {
      output += text;
      if (show) process.stderr.write(text);
    };
    child.stdout.setEncoding("utf8").on("data", take);
    child.stderr.setEncoding("utf8").on("data", take);
    child.on("error", (error) => resolve({ code: 127, output: `${output}${command}: ${error.message}\n` }));
    child.on("close", (code, signal) =>
      resolve({ code: code ?? 1, output: signal ? `${output}ended by ${signal}\n` : output }),
    );
  });
}

/** Runs a script of ours or of a package with this same Node. */
export const runNode = (script, args = [], options = {}) => run(process.execPath, [script, ...args], options);

/** The file behind a package's command: two packages may offer one name, so that node_modules/.bin cannot be trusted. */
export function commandOf(packageName, command = packageName) {
  const { bin } = JSON.parse(readFileSync(at("node_modules", packageName, "package.json"), "utf8"));
  return at("node_modules", packageName, typeof bin === "string" ? bin : bin[command]);
}
