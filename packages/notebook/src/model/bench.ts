import { countsBehind } from "@meshwright/calc/counted";
import type { Measurement } from "@meshwright/calc/drivetrain";
import type { Finding } from "@meshwright/calc/stages";
import type { Session } from "./session.js";

/** Notes turns that were counted by hand, with the counts that they were made with. */
export function measure(session: Session, counted: Omit<Measurement, "date" | "with">): readonly Finding[] {
  const build = session.build!;
  const measurement: Measurement = { ...counted, date: session.today, with: countsBehind(build, counted.what) };
  const label = build.outputs.find(({ id }) => id === counted.what)?.label ?? counted.what;
  return session.change({ measurements: [...(build.measurements ?? []), measurement] }, `${label} turned by hand`);
}
