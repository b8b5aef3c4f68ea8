import type { SaidLine, SaidStrand } from "@meshwright/calc/article";

interface Place {
  readonly strand: SaidStrand;
  readonly above: SaidStrand | undefined;
  readonly index: number;
}

/**
 * Where the arrows lead from a thing on the line: along it to the next one, on to what a shaft feeds and back to where it came
 * from; across it to the other axles.
 */
export function movesFor(
  { strands }: SaidLine,
  key: string,
  isUpright: boolean,
  isRightToLeft: boolean,
): Readonly<Record<string, string | undefined>> {
  const places = new Map<string, Place>();
  const order: SaidStrand[] = [];
  const walk = (list: readonly SaidStrand[], above?: SaidStrand): void => {
    for (const strand of list) {
      order.push(strand);
      strand.cells.forEach((cell, index) => places.set(cell.key, { strand, above, index }));
      walk(strand.feeds, strand);
    }
  };
  walk(strands);
  const here = places.get(key);
  if (!here) return {};
  const { strand, above, index } = here;
  const next = strand.cells[index + 1]?.key ?? strand.feeds.find(({ cells }) => cells.length)?.cells[0]?.key;
  const before = strand.cells[index - 1]?.key ?? above?.cells.at(-1)?.key;
  const axles = order.filter((one) => one.cells.length && (!one.feeds.length || one === strand));
  const across = (by: 1 | -1): string | undefined => {
    const other = axles[axles.indexOf(strand) + by];
    return other?.cells[Math.min(index, other.cells.length - 1)]?.key;
  };
  const all = [...places.keys()];
  const [along, aside] = [
    [before, next],
    [across(-1), across(1)],
  ];
  const [level, upright] = isUpright ? [aside, along] : [along, aside];
  const [left, right] = isRightToLeft ? [level[1], level[0]] : level;
  return {
    ArrowLeft: left,
    ArrowRight: right,
    ArrowUp: upright[0],
    ArrowDown: upright[1],
    Home: all[0],
    End: all.at(-1),
  };
}
