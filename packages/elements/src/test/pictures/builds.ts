import { limpet } from "../page.js";

type Data = Record<string, unknown> & { stages: Stage[]; outputs: Output[]; parts: object[] };
type Stage = Record<string, unknown> & { id: string; label: string };
type Output = Record<string, unknown> & { id: string; label: string; stages: Stage[] };

const fresh = (): Data => JSON.parse(limpet) as Data;
/** Sixty signs, in words as people write them. */
const long = (head: string): string => `${head}, out of the second crate from the boat house at the slip`.slice(0, 60);

const lengthened = (data: Data): Data => {
  for (const list of [data.stages, ...data.outputs.map(({ stages }) => stages)])
    for (const stage of list)
      for (const name of ["label", "driverLabel", "drivenLabel"])
        if (stage[name]) stage[name] = long(String(stage[name]));
  for (const output of data.outputs) output.label = long(output.label);
  return data;
};

const without = (data: Data, ...names: string[]): Data => {
  for (const name of names) delete data[name];
  return data;
};

/** Builds of every size that an article has to bear, by name. */
export const builds: Readonly<Record<string, () => string>> = {
  limpet: () => limpet,
  "six axles": () => {
    const data = without(fresh(), "measurements", "alternatives", "compare", "headline");
    const [front, rear] = data.outputs as [Output, Output];
    data.outputs = Array.from({ length: 6 }, (_, n) => ({
      ...structuredClone(n % 2 ? rear : front),
      id: `axle-${n + 1}`,
      label: `Axle ${n + 1}`,
      stages: (n % 2 ? rear : front).stages.map((stage) => ({ ...stage, id: `${stage.id}-${n + 1}` })),
    }));
    data.parts = [];
    return JSON.stringify(data);
  },
  "twelve stages": () => {
    const data = without(fresh(), "measurements", "alternatives");
    for (let n = 0; n < 10; n++)
      data.stages.push({
        id: `more-${n}`,
        label: `Pair ${n + 3}`,
        kind: "pair",
        driver: 18 + n,
        driven: 20 + n,
        module: "0.8",
      });
    return JSON.stringify(data);
  },
  "300 parts": () => {
    const data = fresh();
    for (let n = 0; n < 300; n++)
      data.parts.push({
        id: `p-${n}`,
        name: `Pinion ${n % 60} of box ${n}`,
        is: "pinion",
        stage: "primary",
        teeth: 10 + (n % 40),
        module: "0.8",
        pressureAngle: 20,
        bore: "5 mm",
        maker: "Saltmarsh Gears",
        price: { amount: "6.20", currency: "EUR", checked: "2026-09-28" },
        available: true,
      });
    return JSON.stringify(data);
  },
  "belts and planets": () => {
    const data = without(fresh(), "measurements", "alternatives", "parts");
    const [front, rear] = data.outputs as [Output, Output];
    const members = { fixed: "ring", input: "sun", output: "carrier" };
    data.stages.unshift({
      ...{ id: "motor-belt", label: "Motor belt", kind: "belt", driver: 18, driven: 60, pitch: "3 mm" },
      ...{ beltTeeth: 95, centre: "80 mm", tensioner: true },
    });
    data.stages.push({ id: "worm", label: "Worm", kind: "worm", starts: 4, teeth: 30 });
    front.stages = [
      { id: "chain", label: "Chain", kind: "belt", chain: true, driver: 14, driven: 42 },
      ...[
        { id: "hub", label: "Planetary hub", kind: "planetary", sun: 15, ring: 45, planet: 15, planets: 3, ...members },
      ],
    ];
    rear.stages = [
      ...[{ id: "hubs", label: "Planetary hub", kind: "planetary", sun: 18, ring: 54, repeat: 2, ...members }],
      { id: "box", label: "Gearbox", kind: "published", value: "2.74" },
    ];
    return JSON.stringify(data);
  },
  "long labels": () => JSON.stringify(lengthened(fresh())),
};
