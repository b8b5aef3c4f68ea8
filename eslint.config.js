import lit from "eslint-plugin-lit";
import webComponents from "eslint-plugin-wc";
import tseslint from "typescript-eslint";

const node = { console: "readonly", process: "readonly", URL: "readonly", Buffer: "readonly" };

export default tseslint.config(
  { ignores: ["**/dist/", "**/node_modules/", "reports/", ".stryker-tmp/", ".cache/", "tests/hosts/**/build/"] },
  tseslint.configs.recommended,
  {
    linterOptions: { reportUnusedDisableDirectives: "error" },
    rules: {
      eqeqeq: "error",
      "no-console": ["error", { allow: ["warn"] }],
      "no-eval": "error",
      "no-implied-eval": "error",
      "no-new-func": "error",
      "no-var": "error",
      "object-shorthand": "error",
      "prefer-const": "error",
      "@typescript-eslint/consistent-type-imports": "error",
      "@typescript-eslint/no-unused-expressions": ["error", { allowShortCircuit: true, allowTernary: true }],
      "@typescript-eslint/no-non-null-assertion": "off",
      "@typescript-eslint/no-unused-vars": [
        "error",
        { argsIgnorePattern: "^_", varsIgnorePattern: "^_", caughtErrors: "none", ignoreRestSiblings: true },
      ],
    },
  },
  {
    // Only ".js" and ".json" endings resolve in browsers, bundlers and Node alike.
    files: ["packages/*/src/**/*.ts"],
    rules: {
      "no-restricted-syntax": [
        "error",
        {
          selector:
            ":matches(ImportDeclaration, ExportNamedDeclaration, ExportAllDeclaration)[source.value=/^\\.+.*(?<!\\.js)$/]",
          message: 'Relative imports end in ".js".',
        },
      ],
    },
  },
  {
    files: ["packages/{elements,notebook}/src/**/*.ts"],
    extends: [lit.configs["flat/recommended"], webComponents.configs["flat/recommended"]],
    rules: {
      "lit/no-invalid-escape-sequences": "error",
      "lit/no-legacy-template-syntax": "error",
      "lit/no-value-attribute": "error",
      "wc/guard-super-call": "off",
    },
  },
  {
    files: ["packages/{elements,notebook}/**/*.test.ts"],
    rules: { "@typescript-eslint/no-unused-expressions": "off", "wc/guard-define-call": "off" },
  },
  {
    // Examples out of doc comments and of the README are run as they are written.
    files: ["tests/demo/**", "tests/examples/**"],
    rules: { "no-new-func": "off" },
  },
  {
    files: ["scripts/**", "tests/**/*.js", "*.config.js", "packages/figures/**"],
    languageOptions: { globals: node },
    rules: { "no-console": "off" },
  },
);
