import { expect, test } from "vitest";
import { elementsIn, sourceOf, textOf } from "./page.js";

// What a reader of the article meets by the names that the trade has for it.
test.each(["final drive", "overdrive", "rollout"])("the story says %s once at least", (name) => {
  const article = elementsIn(sourceOf("index.html")).find(({ tagName }) => tagName === "article")!;
  expect(textOf(article, ({ tagName }) => tagName === "script")).toContain(name);
});
