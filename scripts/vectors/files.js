// What each file of vectors gives and expects, and which functions of calc answer it.
// given: the fields that a case has, all but what it expects; form: the form of every field it expects;
// needs: what calc has to offer; answer: what calc says to one case, in that form. A field whose answer is undefined does
// not apply to the case, and must not be expected of it.
import { fraction, listOf, mapOf, near, same } from "./compare.js";

const interval = { low: fraction, high: fraction };
const ends = (bounded) => bounded && { low: bounded.low.toFraction(), high: bounded.high.toFraction() };

/** A value that has to be exact: an interval in its place is told as one. */
const exact = (bounded) => (bounded.isExact ? bounded.low.toFraction() : ends(bounded));

const differenceForm = { "base=with": interval, "base=of": interval, "base=mean": interval };

function differenceOn(comparison, scope) {
  if (comparison.difference(scope) === undefined) return undefined;
  const on = (base) => ends(comparison.difference(scope, base));
  return { "base=with": on("with"), "base=of": on("of"), "base=mean": on("mean") };
}

/** What stands before π in the travel; nothing where the wheel was measured in another way than across. */
function travelOverPi(calc, { travel }) {
  const holdsPi = travel?.unknowns.some((unknown) => unknown.key === calc.pi().unknowns[0].key);
  return holdsPi ? ends(travel.over(calc.pi()).bounds) : undefined;
}

function outputAnswer(calc, output, expected) {
  const total = output.reduction;
  const digits = new Set(["0", "1", "2", "4", ...Object.keys(expected?.decimal ?? {})]);
  const rounded = (count) =>
    total.factor.toDecimal({ minimumFractionDigits: Number(count), maximumFractionDigits: Number(count) });
  return {
    ratio: ends(total.bounds),
    exact: total.isExact,
    turns: output.turns,
    groups: Object.fromEntries(output.groups.map(({ group, reduction }) => [group, ends(reduction.bounds)])),
    decimal: total.isExact ? Object.fromEntries([...digits].map((count) => [count, rounded(count)])) : undefined,
    travelPerMotorTurnOverPi_mm: travelOverPi(calc, output),
    target: output.standing,
  };
}

export const files = {
  builds: {
    given: ["name", "build"],
    needs: ["readBuild", "evaluate", "pi"],
    form: {
      expect: {
        outputs: mapOf({
          ratio: interval,
          exact: same,
          turns: same,
          groups: mapOf(interval, { ordered: true }),
          decimal: mapOf(same),
          travelPerMotorTurnOverPi_mm: interval,
          target: same,
        }),
        travelDifference: differenceForm,
        gearsOnlyDifference: differenceForm,
        sameWay: same,
        meanRatio: { harmonic: fraction, arithmetic: fraction },
      },
    },
    answer(calc, { build: document, expect }) {
      const { build, findings } = calc.readBuild(document);
      if (build === undefined) throw new Error(findings.map((finding) => finding.message).join(" "));
      const evaluation = calc.evaluate(build);
      const outputs = Object.fromEntries(
        evaluation.outputs.map((output) => [output.id, outputAnswer(calc, output, expect?.outputs?.[output.id])]),
      );
      if (build.compare === undefined) return { expect: { outputs } };
      const comparison = evaluation.compare();
      const { harmonicMean: harmonic, arithmeticMean: arithmetic } = comparison;
      return {
        expect: {
          outputs,
          travelDifference: differenceOn(comparison, "tyres"),
          gearsOnlyDifference: differenceOn(comparison, "gears"),
          sameWay: comparison.sameWay,
          meanRatio:
            harmonic.isExact && arithmetic.isExact
              ? { harmonic: harmonic.low.toFraction(), arithmetic: arithmetic.low.toFraction() }
              : undefined,
        },
      };
    },
  },
  rounding: {
    given: ["value", "rounding"],
    needs: ["rational"],
    form: { expect: same },
    answer: (calc, { value, rounding }) => ({ expect: calc.rational(value).toDecimal(rounding) }),
  },
  change: {
    given: ["from", "to"],
    needs: ["changeOf", "rational", "bounded"],
    form: { expect: { reduction: fraction, wheelSpeed: fraction, wheelTorque: fraction, midpoint: fraction } },
    answer(calc, { from, to }) {
      const change = calc.changeOf(calc.bounded(calc.rational(to).over(from)));
      return {
        expect: {
          reduction: exact(change.reduction),
          wheelSpeed: exact(change.wheelSpeed),
          wheelTorque: exact(change.wheelTorque),
          midpoint: exact(change.midpoint),
        },
      };
    },
  },
  mesh: {
    given: ["pair", "openedBy_mm"],
    needs: ["meshOf"],
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
    answer(calc, { pair, openedBy_mm: opening }) {
      const mesh = calc.meshOf(pair);
      const opened = calc.meshOf(pair, `${opening} mm`);
      return {
        expect: {
          centreDistance_mm: exact(mesh.centreDistance),
          tipDiameter_mm: { driver: exact(mesh.driver.tip), driven: exact(mesh.driven.tip) },
          rootToothUndercut: { driver: mesh.driver.undercut, driven: mesh.driven.undercut },
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
  },
  belt: {
    given: ["pitch_mm", "driver", "driven", "centre_mm", "beltTeeth"],
    needs: ["beltOf"],
    form: { expect: { length_mm: near() }, expectCentre_mm: near(1e-9) },
    answer(calc, { pitch_mm: pitch, driver, driven, centre_mm: centre, beltTeeth }) {
      const pulleys = { driver, driven, pitch: `${pitch} mm` };
      return {
        expect: { length_mm: calc.beltOf({ ...pulleys, centre: `${centre} mm` }).length },
        expectCentre_mm: calc.beltOf({ ...pulleys, beltTeeth }).choices[0]?.centre,
      };
    },
  },
  identify: {
    given: ["value", "read", "driver", "driven"],
    needs: ["toothPairsFor"],
    form: { expect: listOf(listOf(same)) },
    answer: (calc, { value, read, driver, driven }) => ({
      expect: calc.toothPairsFor(value, { driver, driven }, read),
    }),
  },
  turned: {
    given: ["motorTurns", "wheelTurns", "oneWheelHeld", "knownPairs", "driver", "driven"],
    needs: ["countedBox"],
    form: { expect: { total: interval, box: interval, counts: listOf(listOf(same)) } },
    answer(calc, { driver, driven, ...count }) {
      const { total, box, counts } = calc.countedBox(count, { driver, driven });
      return { expect: { total: ends(total), box: ends(box), counts } };
    },
  },
  unmarked: {
    given: ["teeth", "series", "outsideDiameter_mm", "addendum", "span", "pressureAngles"],
    optional: ["outsideDiameter_mm", "addendum", "span", "pressureAngles"],
    needs: ["unmarkedGear"],
    form: { expect: listOf(mapOf(same)) },
    answer(calc, { teeth, series, outsideDiameter_mm: outside, addendum, span, pressureAngles }) {
      const between = (from, to) => ({ from: `${from} mm`, to: `${to} mm` });
      const question = {
        teeth,
        ...(outside && { outside: between(outside.from, outside.to), addendum }),
        ...(span && { span: { teeth: span.teeth, over: between(span.from_mm, span.to_mm) }, pressureAngles }),
      };
      return { expect: calc.unmarkedGear(question, series).canBe };
    },
  },
  find: {
    given: ["drivers", "drivens", "module", "diametralPitch", "restOfTrain", "target", "slot"],
    optional: ["module", "diametralPitch"],
    needs: ["findPairs"],
    form: { expect_nearestToMiddleFirst: listOf(listOf(same)) },
    answer(calc, { drivers, drivens, module, diametralPitch, restOfTrain: rest, target, slot }) {
      if ((module === undefined) === (diametralPitch === undefined)) throw new Error("Not one pitch.");
      const batches = calc.findPairs({
        drivers,
        drivens,
        pitch: module === undefined ? { diametralPitch } : { module },
        outputs: [{ id: "total", rest, from: target.from, to: target.to }],
        mount: { from: `${slot.from_mm} mm`, to: `${slot.to_mm} mm` },
      });
      const pairs = [...batches].flatMap(({ found }) => found.map((pair) => [pair.driver.teeth, pair.driven.teeth]));
      return { expect_nearestToMiddleFirst: pairs };
    },
  },
  solve: {
    given: ["driven", "restOfTrain", "wantedRatio"],
    needs: ["solveCount"],
    form: {
      expect: { driverTeeth: fraction, neighbours: listOf({ teeth: same, ratio: fraction, off: fraction }) },
    },
    answer(calc, { driven, restOfTrain: rest, wantedRatio: reduction }) {
      const { teeth, neighbours } = calc.solveCount({ driven, rest, wanted: { reduction } });
      return {
        expect: {
          driverTeeth: exact(teeth),
          neighbours: neighbours.map((one) => ({
            teeth: one.choice,
            ratio: exact(one.reduction),
            off: exact(one.off),
          })),
        },
      };
    },
  },
  speed: {
    given: ["motor", "volts", "ratio", "wheel"],
    needs: ["speedAt"],
    form: {
      expect: {
        motorRpm: fraction,
        wheelRpm: fraction,
        metresPerSecond: near(),
        kilometresPerHour: near(),
        milesPerHour: near(),
      },
    },
    answer(calc, { motor, volts, ratio: reduction, wheel }) {
      const speed = calc.speedAt({ motor, volts, reduction, wheel });
      // Both ends are the same to far more digits than a plain number holds: only π lies between them.
      const plain = ({ low, high }) => (low.toNumber() === high.toNumber() ? low.toNumber() : undefined);
      return {
        expect: {
          motorRpm: exact(speed.motorRpm),
          wheelRpm: exact(speed.wheelRpm),
          metresPerSecond: plain(speed.metresPerSecond),
          kilometresPerHour: plain(speed.kilometresPerHour),
          milesPerHour: plain(speed.milesPerHour),
        },
      };
    },
  },
};
