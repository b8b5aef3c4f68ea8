/**
 * Registers the notebook and every element that it is made of.
 * @module
 */
import "@meshwright/elements/all";
import { MwNotebookBuy } from "./buy/index.js";
import {
  MwNotebookAxle,
  MwNotebookDrivetrain,
  MwNotebookLetIn,
  MwNotebookLine,
  MwNotebookMotor,
  MwNotebookMount,
  MwNotebookSplit,
  MwNotebookStage,
  MwNotebookWhole,
} from "./drivetrain/index.js";
import { MwNotebook } from "./page/index.js";
import { MwNotebookParts } from "./parts/index.js";
import { MwNotebookPost } from "./post/index.js";
import { MwNotebookStart } from "./start/index.js";
import { MwNotebookWorkshop } from "./workshop/index.js";

for (const one of [
  MwNotebookAxle,
  MwNotebookBuy,
  MwNotebookDrivetrain,
  MwNotebookLetIn,
  MwNotebookLine,
  MwNotebookMotor,
  MwNotebookMount,
  MwNotebookParts,
  MwNotebookPost,
  MwNotebookSplit,
  MwNotebookStage,
  MwNotebookStart,
  MwNotebookWhole,
  MwNotebookWorkshop,
  MwNotebook,
])
  if (!customElements.get(one.tag)) customElements.define(one.tag, one);
