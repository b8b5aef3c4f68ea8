import { outcomeIn } from "../../scripts/lib/examples.js";

/** The code blocks of a language in a Markdown text. */
export const fencesIn = (text: string, language: string): string[] =>
  [...text.matchAll(new RegExp(`^\`\`\`${language}\\n([^]*?)^\`\`\``, "gm"))].map((fence) => fence[1]!);

/**
 * An example as a program that breaks off where something comes to other than it says, and counts on `outcomes`. Its
 * expressions stand in it as they were written, so that a compiler sees them.
 */
export function checkedProgram(code: string): string {
  const lines = code.split("\n").map((line) => {
    const found = outcomeIn(line);
    if (!found) return line;
    const { expression, kind, outcome } = found;
    return kind === "=>"
      ? `$equal((${expression}), (${outcome}), ${JSON.stringify(line)});`
      : `$throws(() => (${expression}), "${outcome!.trim()}", ${JSON.stringify(line)});`;
  });
  const imports = lines.filter((line) => /^import\b/.test(line));
  const body = lines.filter((line) => !/^import\b/.test(line));
  return `${imports.join("\n")}
declare global {
  var outcomes: number;
}
const $plain = (value: unknown): string =>
  JSON.stringify(value, (_, one: unknown) =>
    typeof one === "bigint" ? \`\${one}n\` : one instanceof Map ? [...one] : $sorted(one),
  ) ?? String(value);
const $sorted = (one: unknown): unknown =>
  one && typeof one === "object" && !Array.isArray(one) ? Object.fromEntries(Object.entries(one).sort()) : one;
function $equal(found: unknown, wanted: unknown, line: string): void {
  if ($plain(found) !== $plain(wanted)) throw new Error(\`\${line}\\nfound \${$plain(found)}\`);
  globalThis.outcomes++;
}
function $throws(call: () => unknown, code: string, line: string): void {
  try {
    call();
  } catch (error) {
    if ((error as { code?: unknown }).code !== code) throw new Error(\`\${line}\\nthrew \${String(error)}\`);
    globalThis.outcomes++;
    return;
  }
  throw new Error(\`\${line}\\nthrew nothing\`);
}
void $equal;
void $throws;
${body.join("\n")}
export {};
`;
}
