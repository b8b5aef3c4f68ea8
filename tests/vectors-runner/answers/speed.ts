import type { Bounded } from "@meshwright/calc/exact";
import { speedAt } from "@meshwright/calc/motion";
import type { VectorFile } from "../cases.js";
import { exact } from "../ends.js";
import { fraction, near } from "../fields.js";

type Question = Parameters<typeof speedAt>[0];
interface SpeedCase extends Pick<Question, "motor" | "volts" | "wheel"> {
  readonly ratio: string;
}

/** Both ends are the same to far more digits than a plain number holds: only π lies between them. */
const plain = ({ low, high }: Bounded) => (low.toNumber() === high.toNumber() ? low.toNumber() : undefined);

export const file: VectorFile<SpeedCase> = {
  given: ["motor", "volts", "ratio", "wheel"],
  form: {
    expect: {
      motorRpm: fraction,
      wheelRpm: fraction,
      metresPerSecond: near(),
      kilometresPerHour: near(),
      milesPerHour: near(),
    },
  },
  answer({ motor, volts, ratio: reduction, wheel }) {
    const speed = speedAt({ motor, volts, reduction, wheel });
    return {
      expect: speed && {
        motorRpm: exact(speed.motorRpm),
        wheelRpm: exact(speed.wheelRpm),
        metresPerSecond: plain(speed.metresPerSecond),
        kilometresPerHour: plain(speed.kilometresPerHour),
        milesPerHour: plain(speed.milesPerHour),
      },
    };
  },
};
