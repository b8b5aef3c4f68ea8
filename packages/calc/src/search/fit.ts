import type { Numeric } from "../gears/index.js";
import {
  type AdapterPlate,
  boreReasons,
  type FitMount,
  type FitQuestion,
  fits,
  type GearBody,
  hubReasons,
  reachReasons,
  type Reason,
  type Sleeve,
} from "../fit/index.js";

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

const none: readonly never[] = [];

/** Looks once at what is alike: most of a long list of parts is. */
function remember<T>(fieldsOf: (gear: LooseGear) => unknown[], make: (gear: LooseGear) => T): (gear: LooseGear) => T {
  const byGear = new Map<LooseGear, T>();
  const byText = new Map<string, T>();
  return (gear) => {
    let one = byGear.get(gear);
    if (one === undefined) {
      const text = JSON.stringify(fieldsOf(gear));
      one = byText.get(text) ?? make(gear);
      byText.set(text, one);
      byGear.set(gear, one);
    }
    return one;
  };
}

const pitchOf = ({ module, diametralPitch, pressureAngle }: LooseGear) => ({ module, diametralPitch, pressureAngle });

/** What the teeth and the mount have to say. */
function meshReasons(driver: LooseGear, driven: LooseGear, mount: FitMount): readonly Reason[] {
  const pair = {
    driver: driver.teeth,
    driven: driven.teeth,
    driverShift: driver.shift,
    drivenShift: driven.shift,
    driverTip: driver.tipDiameter,
    drivenTip: driven.tipDiameter,
  };
  return fits({ pair, mount, driver: pitchOf(driver), driven: pitchOf(driven) } as FitQuestion).reasons;
}

/**
 * Whether pairs fit a mount, by `fits`; what is alike is looked at once.
 *
 * @param adapters sleeves and plates that may be used
 *
 * @example
 * const fit = fitBy({ shaft: "1/8 in" }, [{ id: "sleeve", bore: "1/8 in", outside: "5 mm" }]);
 * const { adapters } = fit({ teeth: 15, module: "0.8", bore: "5 mm" }, { teeth: 62, module: "0.8" });
 * adapters.map(({ id }) => id); // => ["sleeve"]
 */
export function fitBy(mount: FitMount = {}, adapters: readonly Adapter[] = []): PairFits {
  const { shaft, steps = [], hubHoles, reach, line } = mount;
  const shafts = shaft === undefined ? steps : [shaft, ...steps];
  const sleeves = adapters.flatMap(({ id, bore, outside }) => (bore && outside ? { label: id, bore, outside } : []));
  const plates = adapters.flatMap(({ id, circles }) => (circles ? { label: id, circles } : []));
  const sortOf = remember(
    ({ teeth, module, diametralPitch, pressureAngle, shift, tipDiameter }) => [
      teeth,
      module,
      diametralPitch,
      pressureAngle,
      shift,
      tipDiameter,
    ],
    () => new Map<object, readonly Reason[]>(),
  );
  const ofDriver = remember(
    ({ bore, width, hub, facing }) => [bore, width, hub, facing],
    (gear) => [
      ...(gear.bore === undefined ? [] : boreReasons(gear.bore, shafts, sleeves, "driver")),
      ...(reach === undefined ? [] : reachReasons(gear, reach, line, "driver")),
    ],
  );
  const ofDriven = remember(
    ({ circles }) => [circles],
    ({ circles }) => (circles && hubHoles ? hubReasons(circles, hubHoles, plates, "driven") : []),
  );
  return (driver, driven) => {
    const row = sortOf(driver);
    const column = sortOf(driven);
    let mesh = row.get(column);
    if (!mesh) row.set(column, (mesh = meshReasons(driver, driven, mount)));
    const [ends, others] = [ofDriver(driver), ofDriven(driven)];
    if (!ends.length && !others.length) return { reasons: mesh, adapters: none };
    const reasons = [...mesh, ...ends, ...others];
    const used = reasons.flatMap(({ code, label }) => (code === "sleeve" || code === "plate" ? label! : []));
    return { reasons, adapters: used.length ? adapters.filter(({ id }) => used.includes(id)) : none };
  };
}
