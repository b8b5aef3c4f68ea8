import { applyChanges } from "@meshwright/calc/document";
import { dayText } from "./days.js";
import type { Session } from "./session.js";

/** Keeps the drivetrain as it stands by today's date, with a note. */
export function keepVersion(session: Session, note: string): void {
  const { build, versions = [] } = session.notebook;
  if (!build) return;
  const number = (build.revision?.number ?? versions.length) + 1;
  const revision = { number, date: session.today, ...(note && { note }) };
  // The version holds what stood until now; what stands from now on has the next number.
  const reading = applyChanges(build, { revision });
  if (!reading.ok) return;
  session.put(
    { versions: [...versions, { date: session.today, note, build }], build: reading.build },
    `Version of ${dayText(session.today)} kept`,
  );
}

/** Brings back how the drivetrain stood at the end of a day. */
export function backToDay(session: Session, index: number): void {
  const day = session.notebook.days?.[index];
  if (day) session.put({ build: day.build }, `Back to how it stood on ${dayText(day.date)}`);
}

/** Brings the drivetrain of a version back; the one that stood is in Undo. */
export function backToVersion(session: Session, index: number): void {
  const version = session.notebook.versions?.[index];
  if (version) session.put({ build: version.build }, `Back to the version of ${dayText(version.date)}`);
}
