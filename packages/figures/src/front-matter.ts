const fences: readonly RegExp[] = [
  // YAML, or what is named behind the fence.
  /^---[ \t]*[a-z]*[ \t]*\r?\n(?:[\s\S]*?\r?\n)??---[ \t]*(?=\r?\n|$)/,
  /^\+\+\+[ \t]*\r?\n(?:[\s\S]*?\r?\n)??\+\+\+[ \t]*(?=\r?\n|$)/,
  /^\{[ \t]*\r?\n(?:[\s\S]*?\r?\n)??\}[ \t]*(?=\r?\n|$)/,
];

/** How much of a text is what generators of pages read and do not show: YAML, TOML or JSON before everything else. */
export function frontMatterOf(text: string): number {
  for (const fence of fences) {
    const found = fence.exec(text);
    if (found) return found[0].length;
  }
  return 0;
}

/** Blanks, and the line ends that were there. */
export const blank = (text: string): string => text.replace(/[^\r\n]/g, " ");
