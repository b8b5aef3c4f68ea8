import { labelAt, oneIn, type Build, type Change, type ChangeSet } from "@meshwright/calc/drivetrain";
import type { Stage } from "@meshwright/calc/stages";

// Every edit has a name that says what it did, so that Undo can say what it will take back.

/** "driverShift" as people write it. */
const plain = (field: string): string => field.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);

const isShort = (value: unknown): value is string | number =>
  typeof value === "number" || (typeof value === "string" && value.length < 40);

/** One value: what it is called, what it was, what it is. */
function valueName(before: Build, after: Build, address: string): string {
  const [id, field = "", ...rest] = address.split(".") as [string, string?, ...string[]];
  const [was, is] = [oneIn(before).value(address), oneIn(after).value(address)];
  const thing = (oneIn(after).value(id) ?? oneIn(before).value(id)) as Record<string, unknown> | undefined;
  const own = typeof thing?.[`${field}Label`] === "string";
  const label = labelAt(after, own ? address : id);
  const of = own || !field ? label : `${label}, ${plain([field, ...rest].join(" "))}`;
  if (isShort(was) && isShort(is)) return `${of} ${was}, now ${is}`;
  if (isShort(is)) return `${of} ${is}`;
  if (isShort(was)) return `${of} ${was}, taken away`;
  return `${of} changed`;
}

const isStructural = (request: ChangeSet | Change): request is Change =>
  "insert" in request || "remove" in request || "move" in request;

const nameOfStage = ({ label, id }: Stage): string => label ?? id;

/** What one request did, in words. */
export function stepName(before: Build, after: Build, request: ChangeSet | Change): string {
  if (isStructural(request)) {
    if ("insert" in request) return `${nameOfStage(request.insert)} put in`;
    if ("remove" in request) return `${labelAt(before, request.remove)} taken out`;
    if ("move" in request) return `${labelAt(after, request.move)} moved`;
    return valueName(before, after, request.set);
  }
  const addresses = Object.keys(request);
  if (addresses.length === 1) return valueName(before, after, addresses[0]!);
  const ids = new Set(addresses.map((address) => address.split(".", 1)[0]!));
  if (addresses.length < 4 && ids.size === 1)
    return addresses.map((address) => valueName(before, after, address)).join(", ");
  return `${[...ids].map((id) => labelAt(after, id)).join(", ")} changed`;
}
