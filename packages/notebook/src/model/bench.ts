import { displays } from "@meshwright/calc/stages";
import { pathTo, type Build, type ChangeSet, type Measurement } from "@meshwright/calc/drivetrain";
import type { Finding } from "@meshwright/calc/stages";
import type { Session } from "./session.js";

/** All counts that drive an output now, by address: a measurement keeps those that it was made with. */
function countsBehind(build: Build, of: string): ChangeSet {
  const output = build.outputs.find(({ id }) => id === of);
  const stages = output ? pathTo(build, output).flat() : [];
  return Object.fromEntries(
    stages.flatMap((stage) =>
      displays[stage.kind](stage).flatMap((piece) =>
        "field" in piece && piece.field !== undefined && piece.value !== undefined
          ? [[`${stage.id}.${piece.field}`, piece.value]]
          : [],
      ),
    ),
  );
}

/** Notes turns that were counted by hand, with the counts that they were made with. */
export function measure(session: Session, counted: Omit<Measurement, "date" | "with">): readonly Finding[] {
  const build = session.build!;
  const measurement: Measurement = { ...counted, date: session.today, with: countsBehind(build, counted.what) };
  const label = build.outputs.find(({ id }) => id === counted.what)?.label ?? counted.what;
  return session.change({ measurements: [...(build.measurements ?? []), measurement] }, `${label} turned by hand`);
}
