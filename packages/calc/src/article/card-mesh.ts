import { spotOf, type Mount } from "../drivetrain/index.js";
import type { Bounded } from "../exact/index.js";
import { fits } from "../fit/index.js";
import { enclose } from "../gears/index.js";
import { fill } from "../languages/index.js";
import { isToothPair } from "../report/index.js";
import { beltsOf } from "./belts.js";
import type { BlockRow } from "./block.js";
import { drawnLength } from "./drawing.js";
import { placeName } from "./places.js";
import type { Reporter } from "./speaker.js";

/** How one mesh is set: its centres tight and as set, the opening and the play that it leaves, and how far to turn it. */
function mountRows(speaker: Reporter, mount: Mount): BlockRow[] {
  const { evaluation, reports, words, figure } = speaker;
  const { stage } = mount;
  const row = (head: string, text: string): BlockRow => ({
    head: fill(words.told, placeName(speaker, stage), head),
    texts: [text],
  });
  const limits = [
    row(reports.centreDistance, figure({ figure: "centre", of: stage })),
    row(reports.slot, figure({ figure: "slot", of: stage })),
  ];
  const pair = spotOf(evaluation.build, stage)?.stage;
  if (!pair || !isToothPair(pair)) return limits;
  const { mesh, opening, centre } = fits({ pair, mount });
  const { circumferentialBacklash: along, normalBacklash: across } = mesh;
  const length = (value: Bounded | number | undefined): string =>
    value === undefined ? words.unknown : drawnLength(speaker, typeof value === "number" ? enclose(value) : value);
  const isOpened = opening !== undefined && (mount.opening !== undefined || opening.high.sign > 0);
  return [
    ...limits,
    ...(isOpened
      ? [
          row(reports.opening, length(opening)),
          row(reports.centreSet, length(centre)),
          row(reports.playAlong, length(along)),
          row(reports.playAcross, length(across)),
        ]
      : []),
    row(reports.allMet, String(pair.driver / mesh.commonFactor)),
  ];
}

/** The belts and chains of a build, each with those that there are for it. */
function beltRows(speaker: Reporter): BlockRow[] {
  const { evaluation, words } = speaker;
  const stages = new Set(evaluation.outputs.flatMap(({ steps }) => steps.map(({ stage }) => stage)));
  return [...stages].flatMap((stage) =>
    beltsOf(speaker, stage).map(([belt, does]): BlockRow => ({
      head: fill(words.told, placeName(speaker, stage.id), belt),
      texts: [does],
    })),
  );
}

/** What sets the distances between the axes: every mount, then every belt. */
export const meshRows = (speaker: Reporter): BlockRow[] => [
  ...(speaker.evaluation.build.mounts ?? []).flatMap((mount) => mountRows(speaker, mount)),
  ...beltRows(speaker),
];
