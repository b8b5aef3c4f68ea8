// What a strict program asks of the packages, and what its compiler has to refuse.
import { evaluate, figureOf, parseBuild, readBuild, type Build } from "@meshwright/calc";
import { difference } from "@meshwright/calc/evaluate";
import { define, MwTeeth, type PageFinding } from "@meshwright/elements";
import "@meshwright/elements/all";
import type { MeshwrightAttributes } from "@meshwright/elements/types";
import { checkFigures } from "@meshwright/figures";

const reading = readBuild({ format: "meshwright-build/1", outputs: [] });
if (reading.ok) {
  const build: Build = reading.build;
  void figureOf(evaluate(build), { figure: "reduction" });
} else {
  // @ts-expect-error: there is no build where it could not be read
  void evaluate(reading.build);
}

const build = parseBuild({ format: "meshwright-build/1", outputs: [{ id: "rear", stages: [] }] });
void difference(build, build);

// The maps of tags and events.
const teeth = document.querySelector("mw-teeth");
if (teeth) teeth.of = "primary.driver";
const holder = document.createElement("mw-build");
void holder.checked.then((findings: readonly PageFinding[]) => findings.map(({ message }) => message.toUpperCase()));
holder.addEventListener("mw-change", ({ detail }) => {
  // @ts-expect-error: a change is no text
  void detail.toUpperCase();
});
document.addEventListener("mw-copy", ({ detail }) => detail.link.toUpperCase());
define(MwTeeth);

const attributes: MeshwrightAttributes["mw-value"] = { figure: "reduction", scope: "gears", digits: 2 };
void attributes;
// @ts-expect-error: no such scope
const wrong: MeshwrightAttributes["mw-value"] = { scope: "gear" };
void wrong;
const axles: MeshwrightAttributes["mw-build"] = { stages: "", front: "Ring: 12 to 35", "axle-third": "Ring: 12 to 35" };
void axles;
void checkFigures("<p></p>").compared;
