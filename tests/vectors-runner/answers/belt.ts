import { beltOf } from "@meshwright/calc/gears";
import type { VectorFile } from "../cases.js";
import { near } from "../fields.js";

interface BeltCase {
  readonly pitch_mm: string;
  readonly driver: number;
  readonly driven: number;
  readonly centre_mm: string;
  readonly beltTeeth: number;
}

export const file: VectorFile<BeltCase> = {
  given: ["pitch_mm", "driver", "driven", "centre_mm", "beltTeeth"],
  form: { expect: { length_mm: near() }, expectCentre_mm: near(1e-9) },
  answer({ pitch_mm: pitch, driver, driven, centre_mm: centre, beltTeeth }) {
    const pulleys = { driver, driven, pitch: `${pitch} mm` };
    return {
      expect: { length_mm: beltOf({ ...pulleys, centre: `${centre} mm` }).length },
      expectCentre_mm: beltOf({ ...pulleys, beltTeeth }).choices[0]?.centre,
    };
  },
};
