import { describe, expect, it } from "vitest";
import { findingWords, messageOf } from "@meshwright/calc/languages";
import { readBuild } from "@meshwright/calc/document";

describe("words of an author", () => {
  it("stay as they are, whatever words of ours they look like", () => {
    const said = ["@build", "@list 3", "@mount", "{label}", "$&"].map((label) =>
      messageOf({ code: "went-along", values: { label, what: ["@parts 3"] } }, findingWords),
    );
    for (const [n, label] of ["@build", "@list 3", "@mount", "{label}", "$&"].entries()) {
      expect(said[n]).toContain(label);
      expect(said[n]).toContain("@parts 3");
    }
  });

  it("are told apart from what is not there", () => {
    const messages = (title: unknown) =>
      readBuild({ format: "meshwright-build/1", title, outputs: [] }).findings.map(({ message }) => message);
    expect(messages([1, 2])).toContainEqual(expect.stringContaining("a list of 2"));
    expect(messages({})).toContainEqual(expect.stringContaining("an object"));
  });
});
