import type { Finding } from "@meshwright/calc/stages";
import type { Session } from "./session.js";

/** Gives the notebook another name, and its drivetrain with it: the card and what is published bear the drivetrain's. */
export function rename(session: Session, title: string): readonly Finding[] {
  const name = `Called ${title}`;
  if (session.build) return session.change({ title }, name, { title });
  session.put({ title }, name);
  return [];
}
