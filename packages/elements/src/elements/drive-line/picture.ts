import { sayDriveLine, type Reporter, type SaidCell, type SaidLine } from "@meshwright/calc/article";
import { spotOf, type Build } from "@meshwright/calc/drivetrain";
import { placeDriveLine, type Box, type PlacedLine } from "@meshwright/calc/layout";
import { stageText } from "@meshwright/calc/report";
import { roomFor, round } from "../../shared/drawn/index.js";
import { drawLine } from "./drawing.js";
import { laneText, letteringFor, sizesFor, totalLines } from "./lettering.js";
import { ink } from "./styles.js";
import { escaped, svgText } from "./svg-text.js";

/** What a picture of a line of drive is to be like. */
export interface PictureOptions {
  readonly width: number;
  readonly height: number;
  /** `paper`: as the notebook prints it. `film`: white with a dark edge and nothing behind it, to lie over a film. */
  readonly look: "paper" | "film";
  /** The drivetrain as it was: every total that is another says so, and every stage. */
  readonly before?: Reporter;
  /** In small letters below: a date, whose it is. */
  readonly note?: string;
}

/** A picture, and the same in words. */
export interface LinePicture {
  readonly svg: string;
  readonly description: string;
}

const em = 16;
/** Widths that a line is laid out for; the one that fills the picture best is taken. */
const widths = [780, 900, 1050, 1200, 1400, 1700, 2000];

const looks = {
  paper: { ink: "#1c2430", second: "#55606b", fault: "#9c2f1b", paper: "#fbfaf6" },
  film: { ink: "#ffffff", second: "#ffffff", fault: "#ffb3a1", paper: undefined },
} as const;

/** A line of text in a box: its baseline, and from where. */
interface Line {
  readonly text: string;
  readonly size: number;
  readonly factor: number;
  readonly kind?: "name" | "note" | "fault" | "total" | "strong";
}

/** Words on as many lines as there is room for. */
function wrapped(line: Line, room: number): readonly Line[] {
  const lines: string[] = [];
  for (const word of line.text.split(" ")) {
    const longer = lines.length ? `${lines.at(-1)} ${word}` : word;
    if (lines.length && roomFor(longer) * line.size <= room + 2) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines.map((text) => ({ ...line, text }));
}

class Drawing {
  readonly #said: SaidLine;
  readonly #was: SaidLine | undefined;
  readonly #speaker: Reporter;
  readonly #before: Reporter | undefined;
  readonly #sizes = sizesFor(em, false);
  /** What is lettered small is not read from a sofa. */
  readonly #isBare: boolean;

  constructor(speaker: Reporter, before: Reporter | undefined, isBare: boolean) {
    this.#isBare = isBare;
    this.#speaker = speaker;
    this.#before = before;
    this.#said = sayDriveLine(speaker);
    this.#was = before && sayDriveLine(before);
  }

  get said(): SaidLine {
    return this.#said;
  }

  /** "was 15 → 62": where the counts of a stage are others than before. */
  notesOf(cell: SaidCell): readonly string[] {
    const notes = this.#isBare ? [] : cell.notes;
    const before = this.#before?.evaluation.build;
    const stage = cell.stage && before ? spotOf(before, cell.stage.id)?.stage : undefined;
    if (!stage || !cell.stage) return notes;
    const [was, is] = [stage, cell.stage].map((one) => stageText(one, "arrow", this.#speaker.writer));
    return was && was !== is ? [`was ${was}`, ...notes] : notes;
  }

  /** What it comes to, in one line. */
  get ends(): string {
    const ends = [...this.#said.totals.values()].map(({ output, label, text }) => {
      const was = this.#wasTotal(output);
      return `${label} ${text}${was ? `, ${was}` : ""}`;
    });
    return ends.join(" · ");
  }

  lay(width: number): PlacedLine {
    const plain = letteringFor(this.#said, this.#sizes, true, (cell) => this.notesOf(cell));
    const lettering: typeof plain = {
      ...plain,
      total: (output) => {
        const was = this.#wasTotal(output);
        const { note } = this.#sizes;
        return [...plain.total(output), ...(was ? [{ width: roomFor(was) * note + 2, height: note * 1.35 }] : [])];
      },
    };
    return placeDriveLine(this.#speaker.evaluation, {
      width,
      lettering,
      isUpright: false,
      isRightToLeft: false,
      broken: new Set(),
    });
  }

  #wasTotal(output: string): string {
    const [was, is] = [this.#was?.totals.get(output)?.text, this.#said.totals.get(output)?.text];
    return was && was !== is ? `was ${was}` : "";
  }

  #head({ key, head }: PlacedLine["cells"][number]): string {
    const cell = this.#said.cells.get(key)!;
    if (!cell.stage || !head) return "";
    const lines = wrapped({ text: cell.name, size: this.#sizes.name, factor: 1.4, kind: "name" }, head.width);
    const height = lines.reduce((sum, { size, factor }) => sum + size * factor, 0);
    return this.#lines(lines, { ...head, y: head.y + head.height - height }, "middle");
  }

  #foot({ key, foot }: PlacedLine["cells"][number]): string {
    const cell = this.#said.cells.get(key)!;
    if (!foot) return "";
    const { name, count, note } = this.#sizes;
    const lines: Line[] = [];
    const add = (line: Line): void => void lines.push(...wrapped(line, foot.width));
    if (!cell.stage && cell.name) add({ text: cell.name, size: name, factor: 1.4, kind: "name" });
    const counts = cell.pieces.map(({ text }) => text).join(" ");
    if (counts) lines.push({ text: counts, size: count, factor: 1.5, kind: "strong" });
    for (const lane of cell.lanes) lines.push({ text: laneText(lane), size: name, factor: 1.5 });
    for (const text of this.notesOf(cell)) lines.push({ text, size: note, factor: 1.35, kind: "note" });
    for (const text of cell.faults) add({ text, size: note, factor: 1.35, kind: "fault" });
    return this.#lines(lines, foot, "middle");
  }

  #lines(lines: readonly Line[], { x, y, width }: Box, anchor: "start" | "middle"): string {
    let top = y;
    return lines
      .map(({ text, size, factor, kind }) => {
        const baseline = top + size * (factor / 2 + 0.34);
        top += size * factor;
        const at = anchor === "middle" ? x + width / 2 : x;
        return `<text class="${kind ?? "plain"}" x="${round(at)}" y="${round(baseline)}" font-size="${round(size)}" text-anchor="${anchor}">${escaped(text)}</text>`;
      })
      .join("");
  }

  /** All that is lettered around the line. */
  letters(line: PlacedLine): string {
    const { name, note, total } = this.#sizes;
    const shafts = line.shafts.map(({ after, note: box }) => {
      const text = after === undefined ? "" : (this.#said.cells.get(after)?.shaft?.text ?? "");
      return box && text
        ? this.#lines([{ text, size: note, factor: 1.3, kind: "note" }], { ...box, x: box.x + 16 }, "start")
        : "";
    });
    const names = new Map<string, string>();
    const walk = (strands: SaidLine["strands"]): void =>
      strands.forEach(({ id, label, feeds }) => {
        names.set(id, label);
        walk(feeds);
      });
    walk(this.#said.strands);
    const labels = line.labels.map((box) =>
      this.#lines([{ text: names.get(box.strand) ?? "", size: name, factor: 1.5, kind: "strong" }], box, "start"),
    );
    const totals = line.totals.map((box) => {
      const [label, text, verdict] = totalLines(this.#said.totals.get(box.output)!);
      const { standing } = this.#said.totals.get(box.output)!;
      const was = this.#wasTotal(box.output);
      const isOff = standing === "below" || standing === "above";
      const lines: Line[] = [
        { text: label!, size: name, factor: 1.4, kind: "strong" },
        { text: text!, size: total, factor: 1.25, kind: "total" },
        ...(verdict
          ? [{ text: verdict, size: note, factor: 1.35, kind: isOff ? ("fault" as const) : ("note" as const) }]
          : []),
        ...(was ? [{ text: was, size: note, factor: 1.35, kind: "note" as const }] : []),
      ];
      return this.#lines(lines, box, "start");
    });
    return [...line.cells.map((cell) => this.#head(cell) + this.#foot(cell)), ...shafts, ...labels, ...totals].join("");
  }

  strokes(line: PlacedLine): string {
    return svgText(drawLine(line, this.#said, new Map(), new Map(), undefined));
  }

  /** The picture in words: what it is of, everything on it in the order of drive, and what it comes to. */
  words(): string {
    const { name, cells, totals } = this.#said;
    const stages = [...cells.values()].flatMap(({ stage, heard }) => (stage ? [heard] : []));
    const ends = [...totals.values()].map(({ output, heard }) => {
      const was = this.#wasTotal(output);
      return was ? `${heard}, ${was}` : heard;
    });
    return [`${name}.`, ...[...stages, ...ends].map((one) => (/[.!?]$/.test(one) ? one : `${one}.`))].join(" ");
  }
}

const letters = (look: (typeof looks)[keyof typeof looks]): string => `
  text { stroke: none; fill: ${look.ink}; font-family: Charter, "Bitstream Charter", Georgia, serif; font-variant-numeric: lining-nums tabular-nums; }
  .name { font-style: italic; }
  .strong, .total { font-weight: 600; }
  text.note { fill: ${look.second}; }
  text.fault { fill: ${look.fault}; font-weight: 600; }
`;

/**
 * A line of drive as a picture of a given size: SVG with its text as text, the same for the same drivetrain every time.
 */
export function linePicture(speaker: Reporter, options: PictureOptions): LinePicture {
  const { width, height, look, before, note } = options;
  const drawing = new Drawing(speaker, before, look === "film");
  const colours = looks[look];
  const margin = Math.round(width / 30);
  const { build } = speaker.evaluation as { readonly build: Build };
  const title = build.title ?? "";
  const heading = title ? Math.round(height / 16) : 0;
  const [foot, band] = [Math.round(height / 38), Math.round(height / 14)];
  const room: Box = {
    x: margin,
    y: margin + heading * 1.4,
    width: width - 2 * margin,
    height: height - 2 * margin - heading * 1.4 - band * 1.3 - (note ? foot * 1.6 : 0),
  };
  const laid = widths.map((one) => {
    const line = drawing.lay(one);
    return { line, scale: Math.min(room.width / one, room.height / line.height, 3) };
  });
  const { line, scale } = laid.reduce((best, one) => (one.scale > best.scale * 1.001 ? one : best));
  const [left, top] = [
    room.x + (room.width - line.width * scale) / 2,
    room.y + (room.height - line.height * scale) / 2,
  ];
  const inside = `<g transform="translate(${round(left)} ${round(top)}) scale(${scale.toFixed(4)})">${drawing.strokes(line)}${drawing.letters(line)}</g>`;
  const size = Math.min(heading, (room.width / Math.max(1, roomFor(title))) * 1.05);
  const titled = title
    ? `<text class="strong" x="${margin}" y="${round(margin + heading)}" font-size="${round(size)}">${escaped(title)}</text>`
    : "";
  const low = height - margin;
  const noted = note ? `<text class="note" x="${margin}" y="${low}" font-size="${foot}">${escaped(note)}</text>` : "";
  const bandSize = Math.min(band, (room.width / Math.max(1, roomFor(drawing.ends))) * 1.05);
  const ended = `<text class="total" x="${margin}" y="${round(low - (note ? foot * 1.6 : 0))}" font-size="${round(bandSize)}">${escaped(drawing.ends)}</text>`;
  const all = `${titled}${inside}${ended}${noted}`;
  const description = drawing.words();
  // Over a film the same lies below once more, wide and dark: it can be read on snow and at night.
  const halo = look === "film" ? `<g class="halo" aria-hidden="true">${all}</g>` : "";
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}" role="img" fill="none" stroke="${colours.ink}" color="${colours.ink}" stroke-linejoin="round" stroke-linecap="round"><title>${escaped(title || "A drivetrain")}</title><desc>${escaped(description)}</desc><style>${ink.cssText}${letters(colours)}
  .halo, .halo * { stroke: #000 !important; stroke-opacity: 0.55; stroke-width: 7 !important; stroke-dasharray: none !important; fill: none !important; opacity: 1 !important; }
  .halo .shade, .halo .fine, .halo .pitch, .halo .link { display: none; }
</style>${colours.paper ? `<rect width="${width}" height="${height}" fill="${colours.paper}" stroke="none" />` : ""}${halo}${all}</svg>\n`;
  return { svg, description };
}
