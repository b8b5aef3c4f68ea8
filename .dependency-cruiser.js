// The order of imports: npm run check runs it, tests/imports breaks each rule once.
// A room is a folder of calc's sources. It imports only rooms that stand before it here; rooms in one line do not import
// each other.
const order = [
  ["exact"],
  ["gears"],
  ["stages"],
  ["drivetrain"],
  ["document"],
  ["evaluate"],
  ["fit"],
  ["layout", "counted", "motion"],
  ["parts"],
  ["search"],
  ["languages"],
  ["report"],
  ["article"],
];
/** What the elements share, each importing only what stands before it. */
const sharedOrder = ["page", "tables", "store", "element", "words", "drawn", "findings", "tools"];
/** Elements do not import each other, but for these. */
const elementsThatImport = { edits: ["teeth"] };

const calc = "^packages/calc/src";
const elements = "^packages/elements/src";
const tests = ["\\.test\\.ts$", "/src/test/"];
const any = (names) => `(${names.join("|")})`;

const forbid = (name, comment, from, to) => ({ name, comment, severity: "error", from, to });

/** For each room but the last: what stands in its line or after it must not be imported. */
const rooms = order.slice(0, -1).flatMap((line, rank) =>
  line.map((room) => {
    const others = order
      .slice(rank)
      .flat()
      .filter((one) => one !== room);
    return forbid(
      `calc-${room}`,
      `${room} imports only rooms before it.`,
      { path: `${calc}/${room}/` },
      { path: `${calc}/${any(others)}/` },
    );
  }),
);

const shared = sharedOrder.map((folder, rank) =>
  forbid(
    `shared-${folder}`,
    `${folder} imports only what stands before it.`,
    { path: `${elements}/shared/${folder}/`, pathNot: tests },
    { path: [`${elements}/elements/`, ...sharedOrder.slice(rank + 1).map((one) => `${elements}/shared/${one}/`)] },
  ),
);

const importing = Object.keys(elementsThatImport);
const apart = [
  forbid(
    "elements-apart",
    "An element imports no other element.",
    { path: `${elements}/elements/([\\w-]+)/`, pathNot: [...tests, `${elements}/elements/${any(importing)}/`] },
    { path: `${elements}/elements/`, pathNot: `${elements}/elements/$1/` },
  ),
  ...importing.map((name) =>
    forbid(
      `elements-apart-${name}`,
      `${name} imports no other element but ${elementsThatImport[name].join(", ")}.`,
      { path: `${elements}/elements/${name}/`, pathNot: tests },
      { path: `${elements}/elements/`, pathNot: `${elements}/elements/${any([name, ...elementsThatImport[name]])}/` },
    ),
  ),
];

const languages = [
  forbid(
    "languages-run-nothing",
    "A language is a table: it runs nothing of the elements.",
    { path: `${elements}/languages/` },
    { path: `${elements}/`, pathNot: `${elements}/languages/`, dependencyTypesNot: ["type-only"] },
  ),
  forbid(
    "languages-types",
    "A language knows the types of the words, and of no element.",
    { path: `${elements}/languages/` },
    { path: `${elements}/`, pathNot: [`${elements}/languages/`, `${elements}/shared/words/`] },
  ),
];

const notebook = "^packages/notebook/src";
/** The rooms of the notebook: what is kept and written knows no page; the parts of the page do not know each other. */
const notebookRooms = [
  ["model", []],
  ["writing", []],
  ["embed", []],
  ["keeping", ["model"]],
  ["frame", ["model"]],
  ...["start", "drivetrain", "parts", "buy", "workshop"].map((part) => [part, ["model", "frame"]]),
  ["post", ["model", "frame", "writing", "embed"]],
  ["page", ["model", "frame", "keeping", "writing", "drivetrain"]],
].map(([room, may]) =>
  forbid(
    `notebook-${room}`,
    `${room} imports only ${may.join(", ") || "what stands outside of the notebook"}.`,
    { path: `${notebook}/${room}/`, pathNot: tests },
    { path: `${notebook}/`, pathNot: [room, ...may].map((one) => `${notebook}/${one}/`) },
  ),
);

export default {
  forbidden: [
    forbid("circle", "Nothing goes round in a circle.", {}, { circular: true }),
    // What the browser loads by address is found by its server; modules of the test runner by the runner.
    forbid(
      "unresolved",
      "Every import leads somewhere.",
      { pathNot: ["\\.test\\.ts$", "^demo/\\w+/"] },
      { couldNotResolve: true },
    ),
    ...rooms,
    forbid(
      "room-without-place",
      "Every folder of calc stands in the order.",
      { path: `${calc}/`, pathNot: [`${calc}/${any(order.flat())}/`, `${calc}/index\\.ts$`] },
      {},
    ),
    forbid(
      "import-of-room-without-place",
      "Every folder of calc stands in the order.",
      {},
      { path: `${calc}/[^/]+/`, pathNot: `${calc}/${any(order.flat())}/` },
    ),
    forbid("calc-alone", "calc has no dependencies, Node's modules among them.", { path: calc }, { pathNot: calc }),
    ...shared,
    ...languages,
    ...apart,
    ...notebookRooms,
    forbid(
      "elements-need",
      "The elements need lit and calc only.",
      { path: elements, pathNot: tests },
      { pathNot: [elements, calc, "(^|/)node_modules/(lit|lit-html|lit-element|@lit/[\\w-]+)/"] },
    ),
    forbid(
      "figures-need",
      "The command needs calc, and no element.",
      { path: "^packages/figures/src" },
      { path: "^packages/", pathNot: ["^packages/figures/src", calc] },
    ),
    forbid(
      "notebook-last",
      "Only the demo imports the notebook.",
      { path: "^packages/(?!notebook/)" },
      { path: "^packages/notebook/" },
    ),
    forbid(
      "packages-only",
      "Packages import nothing of the demo, the scripts or the tests.",
      { path: "^packages/\\w+/src/", pathNot: tests },
      { path: ["^(demo|scripts|seeds|tests)/", "^packages/\\w+/test/"] },
    ),
    forbid(
      "declared",
      "What a package imports stands among its own dependencies.",
      { path: "^packages/\\w+/src/", pathNot: tests },
      { dependencyTypes: ["npm-dev", "npm-no-pkg", "npm-unknown"] },
    ),
    forbid(
      "face",
      "A folder is entered by its index.ts.",
      { path: "^packages/([\\w-]+)/src/((?:shared/|elements/)?[\\w-]+)/", pathNot: "\\.test\\.ts$" },
      {
        path: "^packages/$1/src/(?:shared/|elements/)?[\\w-]+/.+",
        pathNot: ["^packages/$1/src/$2/", "/index\\.ts$", `${elements}/languages/`],
      },
    ),
    forbid(
      "face-from-top",
      "A folder is entered by its index.ts.",
      { path: "^packages/([\\w-]+)/src/[\\w-]+\\.ts$", pathNot: "\\.test\\.ts$" },
      { path: "^packages/$1/src/(?:shared/|elements/)?[\\w-]+/.+", pathNot: "/index\\.ts$" },
    ),
    forbid(
      "top",
      "Nothing inside a package imports its top: that would bring everything.",
      { path: "^packages/([\\w-]+)/src/[\\w-]+/", pathNot: tests },
      { path: "^packages/$1/src/(index|all|article|second|third)\\.ts$" },
    ),
    forbid(
      "other-package-by-name",
      "Another package is imported by its name.",
      { path: "^packages/([\\w-]+)/" },
      { path: "^packages/[\\w-]+/src/", pathNot: "^packages/$1/", dependencyTypesNot: ["aliased"] },
    ),
    forbid("test-helpers", "What tests share is for tests.", { pathNot: tests }, { path: "/src/test/" }),
  ],
  options: {
    doNotFollow: { path: "node_modules" },
    exclude: { path: "/dist/" },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: "tsconfig.json" },
    enhancedResolveOptions: { exportsFields: ["exports"], conditionNames: ["types", "import", "node", "default"] },
  },
};
