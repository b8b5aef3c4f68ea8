/** A function that keeps its last few thousand answers, since lists repeat themselves. */
export function remembering<T>(answer: (text: string) => T): (text: string) => T {
  const answers = new Map<string, T>();
  return (text) => {
    const before = answers.get(text);
    if (before !== undefined || answers.has(text)) return before as T;
    if (answers.size >= 4000) answers.clear();
    const now = answer(text);
    answers.set(text, now);
    return now;
  };
}
