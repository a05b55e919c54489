import type { PassChart } from '../assess/charts.ts';
import type { PassReadings } from '../screens/shell.ts';

/** Passes as the charts of debrief and assessor's desk draw them, with the words below each. */
export function passesOf(charts: readonly PassChart[]): PassReadings[] {
  return charts.map(({ middleDeg, spacing, ...chart }) => ({
    ...chart,
    caption: `${spacing === 1 ? 'neighbouring bars' : `${spacing} bars apart`}, read ${Math.round(Math.abs(middleDeg))}° from the bottom`,
  }));
}
