import type { Widened } from "@meshwright/calc/languages";
import { countWords } from "../counts.js";

/**
 * What the elements say in English, and the list of what every language has to say. `{0}`, `{1}` stand for what is put in;
 * where a count decides the form, the forms bear the names of `Intl.PluralRules`.
 */
export const en = /* @__PURE__ */ Object.assign({}, countWords, {
  article: "article {0}",
  yours: "yours {0} · article {1}",
  less: "One less",
  more: "One more",
  undo: "Undo",
  reset: "Back to the article’s values",
  restored: "These are the article’s values.",
  copy: "Copy a link to this version",
  copied: "Link copied.",
  notebook: "Take it into a notebook",
  link: "Link to this version",
  readers: { one: "A reader’s version: 1 change.", other: "A reader’s version: {0} changes." },
  changed: "You changed {0}.",
  structure: "the stages",
  start: "start",
  enlarged: "the end, {0}×",
  findings: { one: "1 thing to mend", other: "{0} things to mend" },
  sent: "This link changes the author’s numbers.",
  unread: "This link’s changes could not be read.",
  partly: "Not all of this link’s changes could be applied.",
  authors: "These are the author’s numbers.",
  seeAuthors: "See the author’s",
  backToSent: "Back to the sent version",
  hide: "Hide",
  whose: { yours: "yours", sent: "a sender’s" },
  andMore: { one: "and 1 more", other: "and {0} more" },
  listed: "{0}; {1}",
  followed: "{0}. {1}",
  ended: "{0}.",
  unitOfLength: "unit of length",
  close: "Close this bar",
  /** What values beside the counts are called, and whose they are. */
  quantities: {
    diameter: "diameter",
    loadedDiameter: "diameter under load",
    travel: "ground rolled",
    turns: "turns",
    value: "printed ratio",
    cells: "cells",
    maxRpm: "highest speed",
    maxVolts: "highest volts",
    wheelbase: "wheelbase",
    target: "range",
    opening: "opening",
    turnsIn: "turns in",
    turnsOut: "turns out",
    centre: "centre distance",
    beltTeeth: "belt teeth",
    from: "from",
    to: "to",
    parallel: "cells side by side",
    capacity: "capacity",
    wheels: "wheels",
  },
  things: { wheel: "{0} wheel", ownMotor: "{0} motor", motor: "motor", battery: "battery", controller: "controller" },
});

/** The strings of one language. */
export type Words = Widened<typeof en>;
