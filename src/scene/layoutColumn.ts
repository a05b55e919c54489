import { MAT_PARTS, type MatPart } from '../bench/action.ts';
import type { Beside, HungTool, Layout, RailTool, Rect } from './layout.ts';
import { INSTRUMENTS, type Instrument } from './railShape.ts';

type Thing = RailTool | 'mat' | MatPart | HungTool;
type Row = readonly [Thing] | readonly [Thing, Thing];

/** Between two rows, and where they must stand close, px. */
const GAP = 5;
const CLOSE_GAP = 2;
/** Rows an instrument can be read in, and rows of anything else: as high as this where there is room, px. */
const READ = 51;
const LEAST = 29;

/** How closely the things of a phone's column stand, the roomiest first, and the least height of a row, px. */
const CLOSENESS: readonly { readonly paired: readonly (readonly Thing[])[]; readonly row: number }[] =
  (() => {
    const small = ['lens', 'chalk', 'gauges', 'remedies'] as const;
    return [
      { paired: [], row: 46 },
      { paired: [small], row: 46 },
      { paired: [small, MAT_PARTS], row: 36 },
      { paired: [small, MAT_PARTS, ['strip', 'mat']], row: 0 },
    ];
  })();

const isInstrument = (thing: Thing): thing is Instrument => INSTRUMENTS.some((each) => each === thing);

/** Rows from above: those paired stand two to a row, an odd one over the whole breadth. */
function rowsOf(things: readonly Thing[], paired: readonly (readonly Thing[])[]): Row[] {
  const rows: Row[] = [];
  const taken = new Set<Thing>();
  for (const thing of things) {
    if (taken.has(thing)) continue;
    const group = paired.find((each) => each.includes(thing)) ?? [thing];
    const mate = things.find((each) => each !== thing && group.includes(each) && !taken.has(each));
    rows.push(mate ? [thing, mate] : [thing]);
    taken.add(thing);
    if (mate) taken.add(mate);
  }
  return rows;
}

/** Heights of a row with an instrument and of any other, px. */
function rowHeights(rows: readonly Row[], height: number): { read: number; other: number } {
  const reads = rows.filter(([first]) => isInstrument(first)).length;
  const others = rows.length - reads;
  const even = height / rows.length;
  if (reads === 0) return { read: even, other: even };
  const read = Math.max(even, Math.min(READ, (height - LEAST * others) / reads));
  return { read, other: (height - read * reads) / others };
}

function closest(things: readonly Thing[], height: number): Row[] {
  const tried = CLOSENESS.map(({ paired, row }) => ({ rows: rowsOf(things, paired), row }));
  const fits = tried.find(({ rows, row }) => rowHeights(rows, height).other >= row);
  return (fits ?? tried.at(-1)!).rows;
}

function place(rows: readonly Row[], box: Rect): Partial<Record<Thing, Rect>> {
  const gap = box.h / rows.length < LEAST ? CLOSE_GAP : GAP;
  const heights = rowHeights(rows, box.h + gap);
  const placed: Partial<Record<Thing, Rect>> = {};
  let y = box.y;
  for (const row of rows) {
    const h = isInstrument(row[0]) ? heights.read : heights.other;
    const w = (box.w - GAP * (row.length - 1)) / row.length;
    row.forEach((thing, i) => {
      placed[thing] = { x: box.x + i * (w + GAP), y, w, h: h - gap };
    });
    y += h;
  }
  return placed;
}

/**
 * A phone's column of everything that is taken up: each thing has a place of its own, and an instrument is used where
 * it hangs, so that nothing ever lies over another. With much to hold, the small things stand two to a row.
 */
export function columnOf(
  box: Rect,
  { parts, hung }: Beside,
): Pick<Layout, 'tools' | 'mat' | 'partStands' | 'hung' | 'instruments'> {
  // Instruments half-way down, where their leads come to the part without crossing its names.
  const read = hung.filter(isInstrument);
  const rest = hung.filter((each) => !isInstrument(each));
  const things: Thing[] = ['strip', 'lens', 'chalk', 'mat', ...read, ...parts, ...rest];
  const placed = place(closest(things, box.h + GAP), box);
  const of = <T extends Thing>(some: readonly T[]) =>
    Object.fromEntries(some.map((thing) => [thing, placed[thing]])) as Record<T, Rect>;
  return {
    tools: of(['strip', 'lens', 'chalk']),
    mat: placed.mat!,
    partStands: of(parts),
    hung: of(hung),
    instruments: of(INSTRUMENTS.filter((each) => hung.includes(each))),
  };
}
