// What the oldest browsers that we promise do not know must not stand in the elements' scripts: npm run check reads what
// was built. Each rule names one feature; ES2022 is what Safari 16.0 and Chromium 103 both have, but for what is added here.
import compat from "eslint-plugin-compat";
import es from "eslint-plugin-es-x";

/** Names that others bear as well, arrays or classes of ours: told only where the plugin sees whose they are. */
const notOnlyTheirs = [
  ..."drop every filter find flatmap foreach map reduce some take"
    .split(" ")
    .map((name) => `iterator-prototype-${name}`),
  ..."difference intersection union".split(" ").map((name) => `set-prototype-${name}`),
  "array-prototype-with",
];

/** What is known and waits: lower it whenever a place is mended. */
export const most = 0;

export default [
  {
    files: ["packages/elements/dist/*.js"],
    languageOptions: { ecmaVersion: "latest", sourceType: "module" },
    plugins: { compat, "es-x": es },
    settings: {
      // Whose method it is can seldom be told from a built script: what bears such a name is told.
      "es-x": { aggressive: true },
      browsers: ["safari 16.0", "ios_saf 16.0", "chrome 103"],
      lintAllEsApis: true,
    },
    rules: {
      ...es.configs["flat/restrict-to-es2022"].rules,
      ...es.configs["flat/restrict-to-es2022-intl-api"].rules,
      ...es.configs["flat/no-new-in-esnext"].rules,
      ...es.configs["flat/no-new-in-esnext-intl-api"].rules,
      ...Object.fromEntries(notOnlyTheirs.map((name) => [`es-x/no-${name}`, ["error", { aggressive: false }]])),
      // Both have it, newer as it is.
      "es-x/no-array-prototype-findlast-findlastindex": "off",
      "es-x/no-class-static-block": "error",
      "es-x/no-regexp-lookbehind-assertions": "error",
      "compat/compat": "error",
      "no-restricted-syntax": [
        "error",
        {
          selector: "CallExpression[callee.property.name=with][arguments.length=2]",
          message: "ES2023 'Array.prototype.with' method is forbidden",
        },
      ],
    },
  },
];
