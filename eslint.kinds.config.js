// Outside its own room a stage is asked what it can, never which kind it is: npm run check counts where it still is asked.
import { readFileSync } from "node:fs";
import tseslint from "typescript-eslint";
import { at, filesBelow } from "./scripts/lib/paths.js";

/** How often a stage may be asked for its kind. */
export const most = 0;

/** What the kinds are called, by the types of their stages. */
export const kinds = filesBelow(at("packages", "calc", "src", "stages"), (path) => path.endsWith(".ts"))
  .flatMap((path) => [...readFileSync(path, "utf8").matchAll(/\breadonly kind: "([a-z-]+)";/g)])
  .map(([, name]) => name);
if (kinds.length < 7) throw new Error(`Only these kinds of stage are found: ${kinds.join(", ")}.`);

const message = "Ask the stage what it can, not which kind it is.";
/** `stage.kind`, `stage?.kind`, and a `kind` by itself. */
const asked =
  ":matches(MemberExpression[property.name=kind], ChainExpression[expression.property.name=kind], [name=kind])";
const named = `[value=/^(${kinds.join("|")})$/]`;

export default [
  {
    files: ["packages/*/src/**/*.ts"],
    ignores: ["packages/calc/src/stages/**", "**/*.test.ts", "packages/*/src/test/**"],
    languageOptions: { parser: tseslint.parser },
    rules: {
      "no-restricted-syntax": [
        "warn",
        { selector: `BinaryExpression:has(> ${asked}):has(> ${named})`, message },
        { selector: `SwitchStatement:has(> ${asked}) > SwitchCase:has(> ${named})`, message },
        {
          selector: `CallExpression[callee.property.name=includes]:has(> ${asked}.arguments) > .callee > ArrayExpression:has(> ${named})`,
          message,
        },
      ],
    },
  },
];
