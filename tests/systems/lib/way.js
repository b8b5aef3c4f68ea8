// The way from an empty site to a living post, as the README of what is installed tells it. A row walks it step by step, and takes
// from it what has to be written: where a README forgets something, its row fails.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { at } from "../../../scripts/lib/paths.js";

const heading = "## From an empty site to a living post";

/** A step's words on one line, and below them what it gives to write as a block. */
function stepFrom(item) {
  const blocks = [];
  const words = item.replace(/^ *```\w*\n([^]*?)^ *```$/gm, (_, block) => {
    blocks.push(block.replace(/^ {3}/gm, "").trimEnd());
    return "";
  });
  const text = words.replace(/\s+/g, " ").trim();
  const codes = [...text.matchAll(/`([^`]+)`/g)].map(([, code]) => code);
  return { text, codes, block: blocks.join("\n\n") };
}

/** The numbered steps of an integration's README. */
export function stepsOf(name) {
  const text = readFileSync(at("integrations", name, "README.md"), "utf8");
  const [, way] = new RegExp(`^${heading}\n([^]*?)(?=^## |(?![^]))`, "m").exec(text) ?? [];
  assert.ok(way, `integrations/${name}/README.md tells the way from an empty site`);
  const [, list] = /^(1\. [^]*?)(?=^\S(?<!\d)|(?![^]))/m.exec(way);
  return list
    .split(/^\d+\. /m)
    .slice(1)
    .map(stepFrom);
}

/** Walks the README of an integration: `next` gives a step and puts it on record, `end` wants all of them to have been taken. */
export function wayOf(t, name) {
  const steps = stepsOf(name);
  let taken = 0;
  return {
    next() {
      const step = steps[taken];
      assert.ok(step, `a step ${taken + 1} in the README of ${name}`);
      taken += 1;
      t.step(step.block ? `${step.text}\n${step.block}` : step.text);
      return step;
    },
    end() {
      assert.equal(taken, steps.length, `every step of the README of ${name} is taken`);
      t.found("the way from an empty site, by the README alone", `${steps.length} steps, no error`);
    },
  };
}
