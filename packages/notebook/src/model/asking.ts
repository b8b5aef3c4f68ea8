import { freeId, type Build } from "@meshwright/calc/drivetrain";
import { stageShapes, type Stage } from "@meshwright/calc/stages";
import { lengthFault, thousandsFault } from "./typed.js";

// What can be let into the line of drive, and what has to be asked for it: as a person would ask, in one sentence.

/** A blank in a sentence. */
export interface Blank {
  readonly name: string;
  /** What it is, for whoever does not see the sentence. */
  readonly label: string;
  /** `count`: whole, from 1. `counts`: several of them. `ratio`: as printed. `turns`: any number above 0. */
  readonly takes: "count" | "counts" | "ratio" | "turns";
  readonly isOptional?: boolean;
}

/** What something that can be let in is called, and the sentence that asks for it. */
export interface Asking {
  readonly id: string;
  readonly title: string;
  /** One line that says how to recognise it, with the words explained. */
  readonly hint: string;
  readonly sentence: readonly (string | Blank)[];
  /** What the answers come to, by the blanks' names: a stage without its id. */
  readonly make: (answers: Readonly<Record<string, string>>) => Record<string, unknown> & { kind: Stage["kind"] };
}

const count = (name: string, label: string): Blank => ({ name, label, takes: "count" });
const turns = (name: string, label: string): Blank => ({ name, label, takes: "turns" });

const numbersIn = (text: string): number[] => (text.match(/\d+/g) ?? []).map(Number);

export const askings: readonly Asking[] = [
  {
    id: "pair",
    title: "Two gears I counted",
    hint: "The one that the motor's side turns comes first: it drives. The one that it turns is driven.",
    sentence: [
      "A gear with ",
      count("driver", "Teeth of the gear that drives"),
      " teeth turns a gear with ",
      count("driven", "Teeth of the gear that is driven"),
      " teeth.",
    ],
    make: ({ driver, driven }) => ({ kind: "pair", driver: Number(driver), driven: Number(driven) }),
  },
  {
    id: "row",
    title: "A row of gears",
    hint: "Gears that mesh one after the other, each on a shaft of its own. Only the first and the last change the total.",
    sentence: [
      "In the order of drive they have ",
      { name: "teeth", label: "Teeth of each gear, in the order of drive", takes: "counts" },
      " teeth.",
    ],
    make: ({ teeth = "" }) => ({ kind: "train", teeth: numbersIn(teeth) }),
  },
  {
    id: "printed",
    title: "Box with a number",
    hint: "A gearbox or hub that is sold with its ratio. A printed number was shortened, so it is kept as a range until somebody counts.",
    sentence: [
      "The box says ",
      { name: "value", label: "The number on the box", takes: "ratio" },
      " turns in for one turn out.",
    ],
    make: ({ value = "" }) => ({ kind: "published", value: value.trim().replace(",", ".") }),
  },
  {
    id: "unknown",
    title: "Unknown box",
    hint: "Wheels off the ground, battery disconnected. Mark both shafts, turn the motor's side by hand, and count. Between two numbers is good enough.",
    sentence: [
      "For ",
      turns("in", "Turns in"),
      " turns in, it turned out between ",
      turns("from", "Turns out, at least"),
      " and ",
      turns("to", "Turns out, at most"),
      " times.",
    ],
    make: ({ in: turnsIn = "", from = "", to = "" }) => ({
      kind: "measured",
      turnsIn: turnsIn.replace(",", "."),
      turnsOut: { from: from.replace(",", "."), to: to.replace(",", ".") },
    }),
  },
  {
    id: "belt",
    title: "Belt or chain",
    hint: "Pulleys and sprockets are counted like gears; both turn the same way.",
    sentence: [
      "A wheel with ",
      count("driver", "Teeth of the wheel that drives"),
      " teeth pulls one with ",
      count("driven", "Teeth of the wheel that is driven"),
      " teeth.",
    ],
    make: ({ driver, driven }) => ({ kind: "belt", driver: Number(driver), driven: Number(driven) }),
  },
  {
    id: "worm",
    title: "Worm",
    hint: "A screw that turns a wheel. Starts: how many threads begin at its end, mostly 1 or 2.",
    sentence: [
      "A worm with ",
      count("starts", "Starts of the worm"),
      " starts turns a wheel with ",
      count("teeth", "Teeth of the worm wheel"),
      " teeth.",
    ],
    make: ({ starts, teeth }) => ({ kind: "worm", starts: Number(starts), teeth: Number(teeth) }),
  },
  {
    id: "planetary",
    title: "Planetary",
    hint: "A sun in the middle, planets around it, a ring with teeth inside. The planets' count does not change the total.",
    sentence: [
      "The sun has ",
      count("sun", "Teeth of the sun"),
      " teeth, the ring, which is held, ",
      count("ring", "Teeth of the ring"),
      "; the planets' carrier drives on.",
    ],
    make: ({ sun, ring }) => ({
      kind: "planetary",
      sun: Number(sun),
      ring: Number(ring),
      fixed: "ring",
      input: "sun",
      output: "carrier",
    }),
  },
  {
    id: "lever",
    title: "Lever with two speeds",
    hint: "A box in which a lever puts one of two pairs of gears to work.",
    sentence: [
      "In low ",
      count("lowDriver", "Low: teeth of the gear that drives"),
      " turns ",
      count("lowDriven", "Low: teeth of the gear that is driven"),
      ", in high ",
      count("highDriver", "High: teeth of the gear that drives"),
      " turns ",
      count("highDriven", "High: teeth of the gear that is driven"),
      ".",
    ],
    make: ({ lowDriver, lowDriven, highDriver, highDriven }) => ({
      kind: "selectable",
      selected: "low",
      positions: [
        { id: "low", label: "Low", stages: [{ kind: "pair", driver: Number(lowDriver), driven: Number(lowDriven) }] },
        {
          id: "high",
          label: "High",
          stages: [{ kind: "pair", driver: Number(highDriver), driven: Number(highDriven) }],
        },
      ],
    }),
  },
];

/** What stages of each kind are called until somebody names them. */
const names: Partial<Record<Stage["kind"], string>> = {
  pair: "Gears",
  train: "Gear row",
  published: "Box",
  measured: "Unknown box",
  belt: "Belt or chain",
  worm: "Worm",
  planetary: "Planetary",
  cycloidal: "Cycloidal",
  selectable: "Lever",
};

export const blanksOf = ({ sentence }: Asking): readonly Blank[] =>
  sentence.filter((piece): piece is Blank => typeof piece !== "string");

/** What is wrong with an answer, in a sentence; nothing where it will do. */
export function answerFault({ takes }: Blank, text: string): string | undefined {
  const answer = text.trim();
  if (takes === "count" && !/^[1-9]\d{0,5}$/.test(answer)) return "Whole teeth only, from 1.";
  if (takes === "counts" && (numbersIn(answer).length < 2 || /[^\d\s,;>→-]/.test(answer.replace(/\bto\b/g, ""))))
    return "Two counts or more, such as 18 31 45.";
  if (takes === "ratio" && !/^\d+([.,]\d+)?(\s?:\s?1|\/\d+)?$/.test(answer))
    return "As it is printed, such as 2.61 or 27:1.";
  // A printed ratio has three places after its point as a length has.
  const unclear = takes === "turns" ? thousandsFault(answer) : takes === "ratio" ? lengthFault(answer) : undefined;
  if (unclear) return unclear;
  if (takes === "turns" && !(/^\d+([.,]\d+)?$/.test(answer) && Number(answer.replace(",", ".")) > 0))
    return "A number above 0, such as 7.25.";
  return undefined;
}

/** Whether every blank has an answer that will do. */
export const isAnswered = (asking: Asking, answers: Readonly<Record<string, string>>): boolean =>
  blanksOf(asking).every((blank) => answerFault(blank, answers[blank.name] ?? "") === undefined);

/** The stage that answers come to, with an id that nothing has. */
export function stageFrom(
  asking: Asking,
  answers: Readonly<Record<string, string>>,
  build: Build | undefined,
  label?: string,
): Stage {
  const made = asking.make(answers);
  const taken = new Set<string>();
  const idFor = (kind: string): string => {
    const id = freeId(kind, build ? [build] : [], (one) => taken.has(one));
    taken.add(id);
    return id;
  };
  const named = (stage: Record<string, unknown> & { kind: Stage["kind"] }): Record<string, unknown> => ({
    id: idFor(stage.kind),
    label: label ?? names[stage.kind] ?? stage.kind,
    ...stage,
  });
  const stage = named(made);
  if ("positions" in made)
    stage.positions = (made.positions as { label: string; stages: (typeof made)[] }[]).map((position) => ({
      ...position,
      stages: position.stages.map((one) => ({ ...named(one), label: position.label })),
    }));
  return stage as unknown as Stage;
}

/** Whether a stage is two gears that stand in a mount of their own: it has a driver, and its teeth a pitch. */
export const isMounted = (
  stage: Stage,
): stage is Stage & { readonly module?: unknown; readonly diametralPitch?: unknown } =>
  "driver" in stage && "module" in stageShapes[stage.kind];
