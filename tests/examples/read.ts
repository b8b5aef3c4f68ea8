/** An example of a doc comment. */
export interface Example {
  readonly where: string;
  readonly file: string;
  readonly code: string;
}

/** The @example blocks of a source, with the line that each begins on. */
export function examplesOf(file: string, text: string): Example[] {
  const examples: Example[] = [];
  let lines: string[] | undefined;
  const finish = () => {
    lines = undefined;
  };
  text.split("\n").forEach((line, index) => {
    const comment = /^\s*\/?\*+(?!\/)\s?(.*?)(\*\/)?\s*$/.exec(line);
    if (comment === null || /^\s*\*\//.test(line)) return finish();
    const content = comment[1] ?? "";
    if (/^\s*@example\b/.test(content)) {
      lines = [];
      examples.push({ where: `${file}:${index + 1}`, file, code: "" });
      const rest = content.replace(/^\s*@example\s*/, "");
      if (rest !== "") lines.push(rest);
    } else if (/^\s*@[a-z]+/i.test(content)) finish();
    else if (lines !== undefined && !/^\s*```/.test(content)) lines.push(content);
    const last = examples.at(-1);
    if (lines !== undefined && last !== undefined) examples[examples.length - 1] = { ...last, code: lines.join("\n") };
  });
  return examples;
}
