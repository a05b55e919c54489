import { BRUSHES, type GaugeKind, type PartKind } from '../../bench/action.ts';
import type { SheetLine } from '../../bench/paper.ts';
import { barPlace, type Place } from '../../bench/places.ts';
import { isMatPart } from '../../bench/state.ts';
import { partOfBrush } from '../../bench/touched.ts';
import { median } from '../../engine/math/median.ts';
import { STANDS_OUT } from './armatureVerdict.ts';
import type { Hands } from './hands.ts';
import { bringForward, partBrushes } from './matTests.ts';
import type { Drop, FieldBrushPlace, Gauged, Megohms, Notes } from './notes.ts';

/** Insulation tester, millivolt drop and gauges: growler off, armature out of the cradle. */

/** Where the tester's clips go on each part. Two bars of an armature: a bar off its coils would say nothing of them. */
function acrossInsulation(hands: Hands, part: PartKind): readonly (readonly [Place, Place])[] {
  const half = Math.floor(hands.job.armature.bars / 2);
  switch (part) {
    case 'armature':
      return [
        ['shaft', barPlace(0)],
        ['shaft', barPlace(half)],
      ];
    case 'fieldFrame':
      return [
        ['field:case', 'field:brush1'],
        ['field:case', 'field:brush2'],
      ];
    case 'brushPlate':
      return [
        ['plate:metal', 'plate:insulated1'],
        ['plate:metal', 'plate:insulated2'],
      ];
  }
}

/** The insulation tester on one part: clipped on, read, let go, discharged, taken off. */
export function megohmTest(hands: Hands, part: PartKind): Megohms[] {
  if (part === 'fieldFrame') partBrushes(hands);
  else if (isMatPart(part)) bringForward(hands, part);
  return acrossInsulation(hands, part).map(([metal, at]) => {
    clip(hands, 'tester.1', metal);
    clip(hands, 'tester.2', at);
    const megohms = displayed(hands);
    const { volt } = hands.see().tester;
    const place = isMatPart(part) ? { at: at as SheetLine['at'] & string } : {};
    const line: SheetLine = { test: 'megohm', part, count: null, ...place, megohms, testVolt: volt };
    hands.all(
      { type: 'sheet.write', line },
      { type: 'tester.press', on: false },
      { type: 'tester.discharge' },
    );
    hands.all({ type: 'lead.holster', lead: 'tester.1' }, { type: 'lead.holster', lead: 'tester.2' });
    return { part, at, megohms };
  });
}

function clip(hands: Hands, lead: 'tester.1' | 'tester.2', place: Place): void {
  hands.all(
    { type: 'lead.take', lead, grip: 'handle' },
    { type: 'lead.touch', lead, place },
    { type: 'lead.clamp', lead },
  );
}

/** The display lags by some tenths of a second: it is not believed before this, ms. */
const LAG_MS = 2500;
const GLANCE_MS = 500;
const PATIENCE_MS = 15_000;

/** What the display shows once it stands still, the button held down. */
function displayed(hands: Hands): number | 'over' {
  hands.do({ type: 'tester.press', on: true });
  let seen = hands.wait(LAG_MS).tester;
  for (let waited = 0; waited < PATIENCE_MS; waited += GLANCE_MS) {
    const before = seen;
    seen = hands.wait(GLANCE_MS).tester;
    if (seen.megohms === before.megohms && seen.over === before.over) break;
  }
  return seen.over ? 'over' : seen.megohms!;
}

/** The drop of both field branches, each fed by itself. */
export function branchDrops(hands: Hands): Drop[] {
  partBrushes(hands);
  return (['field:brush1', 'field:brush2'] as const).map((at: FieldBrushPlace) => {
    const millivolts = dropOver(hands, 'field:terminal', at, { part: 'fieldFrame', count: null, at });
    return { at, millivolts };
  });
}

/**
 * The drop between every bar and the next, the feed moved along with the meter so that readings can be compared; what
 * stands out is read again, since one figure alone may be a slip.
 */
export function barDrops(hands: Hands, chalked: number): Drop[] {
  const { bars } = hands.job.armature;
  const read = (bar: number): BarDrop => {
    const count = (bar - chalked + bars) % bars;
    const [one, other] = [barPlace(bar), barPlace((bar + 1) % bars)];
    return { at: bar, millivolts: dropOver(hands, one, other, { part: 'armature', count }) };
  };
  const first = Array.from({ length: bars }, (_, bar) => read(bar));
  const again = standingOut(first).slice(0, MOST_AGAIN).map(read);
  return first.map((drop) => again.find(({ at }) => at === drop.at) ?? drop);
}
type BarDrop = Drop & { readonly at: number };
const MOST_AGAIN = 4;

/** Pairs whose drop lies off the middle of all by more than a sound part's do, the furthest first. */
function standingOut(drops: readonly BarDrop[]): number[] {
  const middle = median(drops.map(({ millivolts }) => millivolts ?? Number.POSITIVE_INFINITY));
  const off = drops.map(({ at, millivolts }) => ({
    at,
    off: millivolts === null ? 1 : Math.abs(millivolts / middle - 1),
  }));
  return off
    .filter((one) => one.off > STANDS_OUT)
    .sort((a, b) => b.off - a.off)
    .map(({ at }) => at);
}

function dropOver(
  hands: Hands,
  one: Place,
  other: Place,
  about: Pick<SheetLine, 'part' | 'count' | 'at'>,
): number | null {
  hands.do({ type: 'drop.feed', at: [one, other] });
  hands.do({ type: 'lead.take', lead: 'drop.1', grip: 'handle' });
  hands.do({ type: 'lead.take', lead: 'drop.2', grip: 'handle' });
  hands.do({ type: 'lead.touch', lead: 'drop.1', place: one });
  const { drop } = hands.do({ type: 'lead.touch', lead: 'drop.2', place: other });
  const millivolts = drop.millivolts ?? 0;
  hands.do({ type: 'sheet.write', line: { test: 'millivolt', ...about, millivolts } });
  hands.all({ type: 'lead.holster', lead: 'drop.1' }, { type: 'lead.holster', lead: 'drop.2' });
  hands.do({ type: 'drop.feed', at: null });
  return drop.feedA === 0 ? null : millivolts;
}

const COMMUTATOR: readonly Exclude<GaugeKind, 'brushLength'>[] = ['diameter', 'runOut', 'undercut'];

/** Every gauge the parts of the job call for. */
export function gaugeParts(hands: Hands): Notes['gauges'] {
  const { parts } = hands.job;
  const brushes = BRUSHES.filter((brush) => parts.includes(partOfBrush(brush)));
  return [
    ...(parts.includes('armature') ? gaugeCommutator(hands) : []),
    ...brushes.map((brush) => {
      const part = partOfBrush(brush);
      if (isMatPart(part)) bringForward(hands, part);
      const { gauge } = hands.do({ type: 'gauge.read', gauge: 'brushLength', brush });
      return noted(hands, part, { gauge: 'brushLength', brush, mm: gauge!.mm });
    }),
  ];
}

export function gaugeCommutator(hands: Hands): Gauged[] {
  return COMMUTATOR.map((gauge) => {
    const { mm } = hands.do({ type: 'gauge.read', gauge }).gauge!;
    return noted(hands, 'armature', { gauge, brush: null, mm });
  });
}

function noted(hands: Hands, part: PartKind, read: Gauged): Gauged {
  const { gauge, brush, mm } = read;
  const line: SheetLine = { test: 'gauges', part, count: null, gauge, millimetres: mm };
  hands.do({ type: 'sheet.write', line: brush === null ? line : { ...line, brush } });
  return read;
}
