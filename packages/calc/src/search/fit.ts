import type { Numeric } from "../kinds/index.js";
import {
  type AdapterPlate,
  boreReasons,
  type FitMount,
  fits,
  type GearBody,
  hubReasons,
  reachReasons,
  type Reason,
  type Sleeve,
} from "../mesh/index.js";

/** A gear to choose from: a part, or a bare count. */
export interface LooseGear extends GearBody {
  readonly id?: string;
  readonly teeth: number;
  /** Profile shift, in modules. */
  readonly shift?: Numeric;
  readonly tipDiameter?: string;
}

/** Sleeves and plates that may be used, as parts. */
export type Adapter = Partial<Sleeve & AdapterPlate> & { readonly id: string };

/** What speaks against a pair, what is worth knowing, and the adapters that make it fit. */
export interface PairFit {
  readonly reasons: readonly Reason[];
  readonly adapters: readonly Adapter[];
}

export type PairFits = (driver: LooseGear, driven: LooseGear) => PairFit;

/** Remembers answers by a key: most of a long list of parts is alike. */
function remember<A extends unknown[], K, T>(keyOf: (...of: A) => K, make: (...of: A) => T): (...of: A) => T {
  const known = new Map<K, T>();
  return (...of) => {
    const key = keyOf(...of);
    let one = known.get(key);
    if (one === undefined) known.set(key, (one = make(...of)));
    return one;
  };
}

/**
 * Whether pairs fit a mount, by `fits`; each gear and each sort of pair is looked at once.
 *
 * @param adapters sleeves and plates that may be used
 */
export function fitBy(mount: FitMount = {}, adapters: readonly Adapter[] = []): PairFits {
  const { shaft, steps = [], hubHoles, reach, line } = mount;
  const shafts = shaft === undefined ? steps : [shaft, ...steps];
  const sleeves = adapters.flatMap(({ id, bore, outside }) => (bore && outside ? { label: id, bore, outside } : []));
  const plates = adapters.flatMap(({ id, circles }) => (circles ? { label: id, circles } : []));
  const same = <T>(one: T): T => one;
  const ofDriver = remember(same<LooseGear>, (gear) => [
    ...(gear.bore === undefined ? [] : boreReasons(gear.bore, shafts, sleeves, "driver")),
    ...(reach === undefined ? [] : reachReasons(gear, reach, line, "driver")),
  ]);
  const ofDriven = remember(same<LooseGear>, ({ circles }) =>
    circles && hubHoles ? hubReasons(circles, hubHoles, plates, "driven") : [],
  );
  const pitchOf = ({ module, diametralPitch, pressureAngle }: LooseGear) =>
    ({ module, diametralPitch, pressureAngle }) as GearBody;
  const both = (driver: LooseGear, driven: LooseGear) => ({
    pair: {
      driver: driver.teeth,
      driven: driven.teeth,
      driverShift: driver.shift,
      drivenShift: driven.shift,
      driverTip: driver.tipDiameter,
      drivenTip: driven.tipDiameter,
    },
    driver: pitchOf(driver),
    driven: pitchOf(driven),
  });
  const ofPair = remember(
    (driver: LooseGear, driven: LooseGear) => JSON.stringify(both(driver, driven)),
    (driver, driven) => fits({ ...both(driver, driven), mount } as never).reasons,
  );
  return (driver, driven) => {
    const reasons = [...ofPair(driver, driven), ...ofDriver(driver), ...ofDriven(driven)];
    const used = reasons.flatMap(({ code, label }) => (code === "sleeve" || code === "plate" ? label! : []));
    return { reasons, adapters: adapters.filter(({ id }) => used.includes(id)) };
  };
}
