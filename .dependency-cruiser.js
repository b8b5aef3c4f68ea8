// The order of imports: npm run check runs it. A room is a folder of calc's sources, entered by its index.ts only, and
// imports only rooms that stand before it here; rooms in one line do not import each other.
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

const calc = "^packages/calc/src";
const elements = "^packages/elements/src";

/** For each line of rooms: what stands in the same line or after it must not be imported. */
const upward = order.flatMap((rooms, rank) =>
  rooms.map((room) => {
    const later = order
      .slice(rank)
      .flat()
      .filter((one) => one !== room);
    return {
      name: `calc-${room}`,
      comment: `${room} imports only rooms before it.`,
      severity: "error",
      from: { path: `${calc}/${room}/` },
      to: { path: `${calc}/(${[...later, "index\\.ts$"].join("|")})` },
    };
  }),
);

/** What elements share, in its order; then languages, then the elements, which do not import each other but for one. */
const sharedOrder = ["page", "words", "store", "element", "tools"];
const upwardInShared = sharedOrder.map((folder, rank) => ({
  name: `shared-${folder}`,
  comment: `${folder} imports only what stands before it.`,
  severity: "error",
  from: { path: `${elements}/shared/${folder}/`, pathNot: "\\.test\\.ts$" },
  to: {
    path: [`${elements}/elements/`, ...sharedOrder.slice(rank + 1).map((later) => `${elements}/shared/${later}/`)].join(
      "|",
    ),
  },
}));

export default {
  forbidden: [
    { name: "circle", comment: "Nothing goes round in a circle.", severity: "error", from: {}, to: { circular: true } },
    {
      name: "unresolved",
      comment: "Every import leads somewhere.",
      severity: "error",
      from: { pathNot: "\\.test\\.ts$" },
      to: { couldNotResolve: true },
    },
    ...upward,
    ...upwardInShared,
    {
      name: "face",
      comment: "A folder is entered by its index.ts.",
      severity: "error",
      from: { path: "^packages/([\\w-]+)/src/((?:shared/|elements/)?[\\w-]+)/", pathNot: "\\.test\\.ts$" },
      to: {
        path: "^packages/$1/src/(?:shared/|elements/)?[\\w-]+/.+",
        pathNot: ["^packages/$1/src/$2/", "/index\\.ts$", `${elements}/languages/`],
      },
    },
    {
      name: "room-without-place",
      comment: "Every folder of calc stands in the order above.",
      severity: "error",
      from: { path: `${calc}/`, pathNot: `${calc}/(${order.flat().join("|")}|index\\.ts)` },
      to: {},
    },
    {
      name: "calc-alone",
      comment: "calc has no dependencies.",
      severity: "error",
      from: { path: calc },
      to: { pathNot: calc },
    },
    {
      name: "elements-need",
      comment: "The elements need lit and calc only.",
      severity: "error",
      from: { path: elements, pathNot: "\\.test\\.ts$|src/test/" },
      to: { pathNot: `${elements}|${calc}|/(lit|lit-html|lit-element|@lit)/` },
    },
    {
      name: "figures-need",
      comment: "The command needs calc, and no element.",
      severity: "error",
      from: { path: "^packages/figures/src" },
      to: { path: "^packages/(elements|notebook)/" },
    },
    {
      name: "notebook-last",
      comment: "Only the demo imports the notebook.",
      severity: "error",
      from: { path: "^packages/(?!notebook)" },
      to: { path: "^packages/notebook/" },
    },
  ],
  options: {
    doNotFollow: { path: "node_modules" },
    exclude: { path: "/dist/" },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: "tsconfig.json" },
  },
};
