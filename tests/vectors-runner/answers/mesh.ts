import { meshOf } from "@meshwright/calc/gears";
import type { VectorFile } from "../cases.js";
import { exact } from "../ends.js";
import { fraction, near, same } from "../fields.js";

interface MeshCase {
  readonly pair: Parameters<typeof meshOf>[0];
  readonly openedBy_mm: string;
}

export const file: VectorFile<MeshCase> = {
  given: ["pair", "openedBy_mm"],
  form: {
    expect: {
      centreDistance_mm: fraction,
      tipDiameter_mm: { driver: fraction, driven: fraction },
      rootToothUndercut: { driver: same, driven: same },
      contactRatio: near(1e-9),
      commonFactor: same,
      hunting: same,
      driverTurnsUntilSameTeethMeet: same,
    },
    expectOpened: {
      operatingPressureAngle_deg: near(),
      contactRatio: near(1e-9),
      normalBacklash_mm: near(1e-9),
      circumferentialBacklash_mm: near(1e-9),
    },
  },
  answer({ pair, openedBy_mm: opening }) {
    const mesh = meshOf(pair);
    const opened = meshOf(pair, `${opening} mm`);
    return {
      expect: {
        centreDistance_mm: mesh.centreDistance && exact(mesh.centreDistance),
        tipDiameter_mm: mesh.driver &&
          mesh.driven && { driver: exact(mesh.driver.tip), driven: exact(mesh.driven.tip) },
        rootToothUndercut: { driver: mesh.driver?.undercut, driven: mesh.driven?.undercut },
        contactRatio: mesh.contactRatio,
        commonFactor: mesh.commonFactor,
        hunting: mesh.hunting,
        driverTurnsUntilSameTeethMeet: mesh.driverTurns,
      },
      expectOpened: {
        operatingPressureAngle_deg: opened.operatingPressureAngle,
        contactRatio: opened.contactRatio,
        normalBacklash_mm: opened.normalBacklash,
        circumferentialBacklash_mm: opened.circumferentialBacklash,
      },
    };
  },
};
