import { assert } from "@esm-bundle/chai";
import { define, MeshwrightElement, version } from "./index.js";

const warnings = (act: () => void): unknown[] => {
  const { warn } = console;
  const heard: unknown[] = [];
  console.warn = (...all) => void heard.push(...all);
  try {
    act();
  } finally {
    console.warn = warn;
  }
  return heard;
};

const elementOf = (tag: string, of = version) =>
  class extends MeshwrightElement {
    static override readonly tag = tag;
    static override readonly version = of;
  };

describe("define", () => {
  it("registers a class under its name, once, and says nothing", () => {
    const first = elementOf("mw-first-test");
    assert.deepEqual(
      warnings(() => {
        define(first);
        define(first, elementOf("mw-first-test"));
      }),
      [],
    );
    assert.equal(customElements.get("mw-first-test"), first);
  });

  it("leaves a name to another version, with a warning", () => {
    define(elementOf("mw-second-test", "0.0.1"));
    const [warning] = warnings(() => define(elementOf("mw-second-test")));
    assert.include(warning, "0.0.1");
    customElements.define("mw-third-test", class extends HTMLElement {});
    assert.lengthOf(
      warnings(() => define(elementOf("mw-third-test"))),
      1,
    );
  });

  it("speaks of the version that the package has", async () => {
    const response = await fetch("/packages/elements/package.json");
    assert.equal(version, (await response.json()).version);
  });
});
