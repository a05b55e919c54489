import type { Observation } from '../../../bench/observation.ts';
import { betweenStrokes } from '../../../bench/scale.ts';
import type { FigureTest } from './entryKinds.ts';

/** What a careful eye reads off the printed scale: a stroke, or halfway between two, A. */
export function nearestReading({ needle, rangeA }: Observation): number {
  const { lowA, highA, nearer } = betweenStrokes(needle, rangeA);
  if (nearer === 'middle') return Number(((lowA + highA) / 2).toFixed(3));
  return nearer === 'low' || nearer === 'on low' ? lowA : highA;
}

/** What a tool of the rail shows now, as it would be typed; null while it shows nothing. */
export function figureShown(test: FigureTest, { tester, drop, gauge }: Observation): string | null {
  if (test === 'megohm') {
    if (tester.megohms === null) return null;
    return tester.over ? 'over' : String(tester.megohms);
  }
  const figure = test === 'millivolt' ? drop.millivolts : (gauge?.mm ?? null);
  return figure === null ? null : String(figure);
}
