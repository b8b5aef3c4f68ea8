import type { Numeric } from "../kinds/index.js";
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
  const judge = (driver: LooseGear, driven: LooseGear): PairFit => {
    const pitchOf = ({ module, diametralPitch, pressureAngle }: LooseGear) => ({
      module,
      diametralPitch,
      pressureAngle,
    });
    const question = {
      pair: {
        driver: driver.teeth,
        driven: driven.teeth,
        driverShift: driver.shift,
        drivenShift: driven.shift,
        driverTip: driver.tipDiameter,
        drivenTip: driven.tipDiameter,
      },
      mount,
      driver: pitchOf(driver),
      driven: pitchOf(driven),
    };
    const reasons = [
      ...fits(question as FitQuestion).reasons,
      ...(driver.bore === undefined ? [] : boreReasons(driver.bore, shafts, sleeves, "driver")),
      ...(reach === undefined ? [] : reachReasons(driver, reach, line, "driver")),
      ...(driven.circles && hubHoles ? hubReasons(driven.circles, hubHoles, plates, "driven") : []),
    ];
    const used = reasons.flatMap(({ code, label }) => (code === "sleeve" || code === "plate" ? label! : []));
    return { reasons, adapters: adapters.filter(({ id }) => used.includes(id)) };
  };
  // Most of a long list of parts is alike: what is alike is looked at once.
  const sorts = new Map<string, number>();
  const known = new Map<LooseGear, number>();
  const answers = new Map<number, PairFit>();
  const sortOf = (gear: LooseGear): number => {
    let sort = known.get(gear);
    if (sort === undefined) {
      const { teeth, module, diametralPitch, pressureAngle, shift, tipDiameter, bore, circles, width, hub, facing } =
        gear;
      const text = JSON.stringify([
        teeth,
        module,
        diametralPitch,
        pressureAngle,
        shift,
        tipDiameter,
        bore,
        circles,
        width,
        hub,
        facing,
      ]);
      sort = sorts.get(text) ?? sorts.size;
      sorts.set(text, sort);
      known.set(gear, sort);
    }
    return sort;
  };
  return (driver, driven) => {
    const key = sortOf(driver) * 2 ** 26 + sortOf(driven);
    let answer = answers.get(key);
    if (!answer) answers.set(key, (answer = judge(driver, driven)));
    return answer;
  };
}
