// A build whose ids, groups and versions stand for an author's own words.
import { parseBuild } from "@meshwright/calc/document";

const pair = (id: string, more: object = {}) => ({ id, kind: "pair", driver: 12, driven: 35, module: "0.8", ...more });

export const sample = parseBuild({
  format: "meshwright-build/1",
  title: "Limpet",
  stages: [pair("primary", { group: "gearbox" }), { id: "row", kind: "train", teeth: [18, 31, 45], group: "gearbox" }],
  outputs: [
    { id: "front", stages: [pair("front-ring", { group: "ends" })], wheel: { diameter: "124 mm" } },
    { id: "rear", stages: [pair("rear-ring", { group: "ends" })], wheel: { diameter: "120 mm" } },
  ],
  centre: { kind: "differential" },
  modes: [
    { id: "crawl", label: "Crawl", positions: {} },
    { id: "cruise", label: "Cruise", positions: {} },
  ],
  target: { from: 20, to: 30 },
  wheelbase: "310 mm",
  motor: { kv: 1850 },
  battery: { cells: 3, chemistry: "lipo" },
  mounts: [{ stage: "primary", from: "18 mm", to: "19 mm" }],
  alternatives: [{ id: "deeper", changes: { "rear-ring.driver": 11 } }],
  revision: { number: 2 },
  revisions: [{ number: 1, back: [{ set: "rear-ring.driver", to: 13 }] }],
});

export const axles = ["front", "rear"];
export const stages = ["primary", "row", "front-ring", "rear-ring"];
export const pairs = ["primary", "front-ring", "rear-ring"];
export const groups = ["gearbox", "ends"];
export const versions = ["article", "deeper", "revision-1"];
export const modes = ["crawl", "cruise"];
