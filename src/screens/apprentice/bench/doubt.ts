import type { GaugeKind } from '../../../bench/action.ts';
import type { SheetLine } from '../../../bench/paper.ts';
import type { ArmatureView } from '../../../scenario/public/job.ts';

/** What of an armature a line can be held against. */
export type Known = Pick<ArmatureView, 'bars' | 'commutatorRadius'>;

/** Why a line looks odd on its face, in one short phrase, or null. It is kept all the same. */
export function doubt(line: SheetLine, { bars, commutatorRadius }: Known): string | null {
  if (line.count !== null && line.count >= bars) return `only ${bars} bars to count: 0 to ${bars - 1}`;
  return currentDoubt(line) ?? megohmDoubt(line) ?? dropDoubt(line) ?? lengthDoubt(line, commutatorRadius);
}

function currentDoubt({ readingA, rangeA }: SheetLine): string | null {
  if (readingA === undefined) return null;
  if (readingA < 0) return 'an alternating current has no sign';
  return rangeA !== undefined && readingA > rangeA ? `more than the ${rangeA} A scale shows` : null;
}

/** End of the insulation tester's scale, megohms, as it is printed on it. */
const MOST_MEGOHMS = 999;

function megohmDoubt({ megohms }: SheetLine): string | null {
  if (megohms === undefined || megohms === 'over') return null;
  if (megohms < 0) return 'no resistance is less than nothing';
  return megohms > MOST_MEGOHMS ? `beyond the ${MOST_MEGOHMS} MΩ the tester shows` : null;
}

/** End of the millivoltmeter's scale, mV, as it is printed on it. */
const MOST_MILLIVOLTS = 200;

function dropDoubt({ millivolts }: SheetLine): string | null {
  if (millivolts === undefined || Math.abs(millivolts) <= MOST_MILLIVOLTS) return null;
  return `beyond the ${MOST_MILLIVOLTS} mV the meter shows`;
}

/** Greatest lengths such parts have, mm; a diameter is held against the armature on the card. */
const MOST_MM: Readonly<Record<Exclude<GaugeKind, 'diameter'>, number>> = {
  runOut: 2,
  undercut: 3,
  brushLength: 40,
};

function lengthDoubt({ millimetres, gauge }: SheetLine, radiusM: number): string | null {
  if (millimetres === undefined) return null;
  if (millimetres < 0) return 'no length is less than nothing';
  if (gauge === undefined) return null;
  if (gauge !== 'diameter') return millimetres > MOST_MM[gauge] ? 'far more than such a part has' : null;
  const mm = 2000 * radiusM;
  return Math.abs(millimetres - mm) > mm / 5 ? 'far from any commutator of this kind' : null;
}
