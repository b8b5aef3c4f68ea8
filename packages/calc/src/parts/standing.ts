import { type Build, oneIn, type Part } from "../drivetrain/index.js";
import type { FitQuestion } from "../fit/index.js";
import { needsOf } from "./needs.js";
import type { Need } from "./places.js";
import { fittedTo } from "./stage-needs.js";

/** The part that is said to be in a place; where the stage names one of its counts, whatever its pitch is. */
function saidToBe(need: Need | undefined, fitted: readonly Part[]): Part | undefined {
  if (!need || need.named) return need?.part;
  const { is, teeth, driver, driven } = need;
  return fitted.find(
    (part) => is.includes(part.is) && part.teeth === teeth && part.driver === driver && part.driven === driven,
  );
}

/**
 * What is said to stand in a pair's place, as `fits` asks for it: the gears that the stage names, or that are meant for it, and
 * the sleeves and plates that they get. Of what is sold as a set the bore is the driver's, the holes are the driven gear's.
 */
export function standingIn(build: Build, stage: string): Pick<FitQuestion, "driver" | "driven" | "sleeves" | "plates"> {
  const found = oneIn(build)(stage)?.stage;
  const ids = found ? fittedTo(found) : [];
  const fitted = (build.parts ?? []).filter(({ id }) => ids.includes(id));
  const here = needsOf(build).filter((need) => need.stage === stage);
  // Behind one that is sold as a set stands what holds it, which has no teeth.
  const [first, second] = here.slice(0, 2).map((need, n) => (n && !need.teeth ? undefined : saidToBe(need, fitted)));
  const driven = first?.driver === undefined ? second : { ...first, bore: undefined };
  const between = here.flatMap(({ part }) => part ?? []);
  return {
    ...(first && { driver: first }),
    ...(driven && { driven }),
    sleeves: between.flatMap(({ id, is, bore, outside }) =>
      is === "sleeve" && bore !== undefined && outside !== undefined ? { label: id, bore, outside } : [],
    ),
    plates: between.flatMap(({ id, is, circles }) => (is === "plate" && circles ? { label: id, circles } : [])),
  } as Pick<FitQuestion, "driver" | "driven" | "sleeves" | "plates">;
}
