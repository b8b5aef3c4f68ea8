import { errorOf, findingOf, type Finding } from "../stages/index.js";
import { passes, unknownAttribute } from "./attribute-findings.js";
import { checkBuild } from "./check.js";
import { axleAttributeOf } from "./notation-names.js";
import { nearestTo } from "./nearest.js";
import { NotationReader } from "./notation-reader.js";
import { refused, type Reading } from "./reading.js";

/**
 * Reads a build from attributes: `stages="Spur and pinion: 15 to 62; Gear row: 18 to 31 to 45" front="Ring: 13 to 38"
 * front-wheel="124 mm" target="38 to 46"`. Stages stand in the order of drive, with a semicolon between them; the label
 * before the colon makes the id. Axles are `front`, `middle`, `rear`, `left`, `right`, `drive`, any other `axle-NAME`, each with
 * `-wheel` and `-motor`; the words beside them are {@link buildWords}. Typographic dashes, quotes and white space of any kind
 * do no harm. What arrives half is not believed: without `stages` there is no build, an axle known only by its wheel or motor is
 * an error, and a `seal` that does not fit is one. Never throws.
 *
 * @param attributes all of an element, by name; what is the page's own is passed over
 * @returns findings, each pointing to its attribute by name where one is to blame: `/front-wheel`
 *
 * @example
 * import { buildFromAttributes } from "@meshwright/calc/document";
 * const { build } = buildFromAttributes({ stages: "Spur and pinion: 15 to 62", rear: "Ring: 12 to 35, set; Hub: printed 1.5" });
 * build?.stages; // => [{ id: "spur-and-pinion", label: "Spur and pinion", kind: "pair", driver: 15, driven: 62 }]
 * build?.outputs[0]?.stages[1]; // => { id: "rear-hub", label: "Hub", kind: "published", value: "1.5" }
 * buildFromAttributes({ stages: "", rear: "Ring: 12/35" }).findings[0]?.at; // => "/rear"
 * buildFromAttributes({ stages: "", raer: "Ring: 12 to 35" }).findings[0]?.values.nearest; // => ["rear"]
 */
export function buildFromAttributes(attributes: Readonly<Record<string, string>>): Reading {
  const findings: Finding[] = [];
  const reader = new NotationReader((code, name, values, word) => {
    const about = code === "seal-broken" ? "meaning" : "shape";
    const nearest = word && { nearest: nearestTo(word.found, word.known) };
    findings.push(errorOf(about, code, `/${name}`, { ...values, ...nearest }));
  });
  const axles = Object.keys(attributes).filter((name) => name.startsWith("axle-") && !axleAttributeOf(name)?.part);
  const document = reader.read(
    attributes,
    (name, looksLikeStages) => {
      const others = axles.filter((axle) => axle !== name);
      findings.push(unknownAttribute("mw-build", name, looksLikeStages(), others));
    },
    (name) => passes("mw-build", name),
  );
  if (findings.some(({ severity }) => severity === "error")) return refused(...findings);
  const names = [...reader.outputs.keys()].map((axle) => reader.attributes.get(axle)!);
  const reading = checkBuild(document);
  const all = [
    ...findings,
    ...reading.findings.map((finding) => {
      const at = finding.at
        .replace(
          /^\/outputs\/(\d+)(?:\/(wheel|motor)\b)?/,
          (_, n: string, part?: string) => `/${names[+n]}${part ? `-${part}` : ""}`,
        )
        .replace(/^\/mounts\b/, "/mount");
      return findingOf(finding.severity, finding.about, finding.code, at, finding.values);
    }),
  ];
  return reading.ok ? { ...reading, findings: all } : refused(...all);
}
