/**
 * The sentences of a sheet in English; a language gives its own table of the same shape. The names in braces are `{text}`, the
 * cell as it stands, `{head}`, its column's head, `{line}`, the line of the file, and `{guess}`.
 */
export const sheetWords = {
  /** What is asked, by code. */
  questions: {
    "count-unclear": "“{text}” is no plain whole number.",
    "how-many": "“{text}”: how many are there?",
    "pair-for-one": "“{text}” is two counts, and this part has one.",
    "pair-order": "“{text}”: which of the two drives?",
    "ratio-unclear": "“{text}” is no ratio such as 2.74 or 27:1.",
    "ratio-turned": "“{text}”: turns of the motor for one of the wheel, or the other way round?",
    "number-unclear": "“{text}” is no plain number.",
    "number-ambiguous": "“{text}”: is the sign in it a decimal sign, or does it divide thousands?",
    "length-unclear": "“{text}” is no plain length.",
    "unit-missing": "“{text}” of what: millimetres or inches?",
    "which-diameter": "“{text}”: which diameter of the gear is it?",
    "circles-unclear": "“{text}” is no list of hole circles such as 4 x 24 mm.",
    "pitch-unclear": "“{text}” is no pitch such as module 0.8 or 48 DP.",
    "pitch-unsaid": "“{text}” bears no mark: is it a module, a diametral pitch or a length?",
    "pitch-as-length": "“{text}” is a length: is it the module?",
    "pitch-twice": "A module and a diametral pitch: which one is marked on the part?",
    "module-or-metres": "“{text}”: is it a module, or metres?",
    "date-unclear": "“{text}” is no date.",
    "date-partial": "“{text}” is not a whole date: which day is it?",
    "date-ambiguous": "“{text}”: which comes first, the day or the month?",
    "date-serial": "“{text}” is a spreadsheet's number of a day.",
    "price-unclear": "“{text}” is no plain price.",
    "price-zero": "“{text}”: is it free, or is the price not known?",
    "price-each": "“{text}”: is that for one piece, or for the pack?",
    "currency-missing": "“{text}” in which currency?",
    "currency-shared": "“{text}”: several currencies have this sign. Which one is it?",
    "currency-unclear": "“{text}” is no currency.",
    "yes-or-no": "“{text}”: can it be had?",
    "cross-unclear": "“{text}”: does a cross mean yes or no here?",
    "kind-unknown": "What is this part?",
    "kind-unsure": "“{text}”: what is this part?",
    missing: "Line {line} does not say its {field}.",
    "from-name": "The name has a number in it: is that its {field}?",
    blanks: "The cell is empty: is it the same as above?",
    "stage-unclear": "“{text}”: for which stage of the build is it?",
    "status-unclear": "“{text}” is no state such as fitted, ordered or spare.",
    "form-unclear": "“{text}” is no form of teeth such as spur, helical or bevel.",
    "facing-unclear": "“{text}”: hub in or hub out?",
    "text-long": "The text is longer than {most} characters.",
    failure: "“{text}” is what a spreadsheet shows when it could not reckon or show a value.",
    "column-unknown": "What is in the column “{head}”? It is not used so far.",
    "column-unsure": "Is the column “{head}” what it was taken for?",
    "column-twice": "Another column tells the same as “{head}”: which one counts?",
    "column-by-cells": "The column has no known head. Is it what its cells look like?",
    "quantity-unclear": "“{head}”: pieces that you own, or pieces in a pack?",
    "stock-unclear": "“{head}”: what the shop has, or pieces that you own?",
    "beyond-head": "“{text}” stands beyond the last head: has a cell of line {line} been cut in two?",
    "quote-doubtful": "A cell of line {line} holds what looks like further rows: is a quotation mark missing?",
    "row-alone": "Only “{text}” stands in line {line}: is it a part?",
    "row-above": "Line {line} stands above the heads: is it a part?",
  },
  /** What became of a guess: it stands in the part, or it is only offered. */
  guesses: { taken: "Taken for {guess}.", offered: "Perhaps {guess}." },
  /** Why a column was taken for what it is. */
  reasons: {
    head: "by its head",
    group: "by its head and the one above it",
    cells: "by its cells",
    set: "set by hand",
    unknown: "its head is not known",
    "no-field": "nothing of a part",
    twice: "another column tells it already",
    counting: "it counts the rows",
  },
  /** Why a row is no part. */
  passed: {
    head: "heads of columns",
    units: "units of columns",
    above: "stands above the heads",
    section: "a heading for the rows below",
    total: "a total",
    below: "stands below the parts",
    set: "left out by hand",
  },
  fields: {
    id: "id",
    number: "number",
    name: "name",
    is: "kind",
    stage: "stage",
    teeth: "teeth",
    driver: "driver's teeth",
    driven: "driven gear's teeth",
    value: "printed ratio",
    module: "module",
    diametralPitch: "diametral pitch",
    toothPitch: "pitch",
    pitch: "belt pitch",
    pressureAngle: "pressure angle",
    form: "form of the teeth",
    shift: "profile shift",
    tipDiameter: "tip diameter",
    bore: "bore",
    outside: "outside diameter",
    diameter: "wheel diameter",
    round: "outside diameter",
    across: "diameter",
    width: "width",
    hub: "boss",
    facing: "side of the hub",
    circles: "hole circles",
    maker: "maker",
    price: "price",
    currency: "currency",
    checked: "date of the price",
    source: "shop",
    available: "on sale",
    pack: "pieces in a pack",
    owned: "pieces owned",
    status: "state",
    unused: "not used",
  },
} as const;

/** What is asked about a sheet that could be read in two ways. */
export type QuestionCode = keyof typeof sheetWords.questions;
/** Why a column of a sheet was taken for what it was. */
export type ColumnReason = keyof typeof sheetWords.reasons;
/** Why a row of a sheet was passed over. */
export type PassedCode = keyof typeof sheetWords.passed;

/** The words of one language for sheets. */
export type SheetWords = {
  readonly [Table in keyof typeof sheetWords]: { readonly [Code in keyof (typeof sheetWords)[Table]]: string };
};
