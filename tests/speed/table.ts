import type { SpeedRow } from './measure.ts';
import { AIM_CALL, AIM_POINT, type Ratio } from './suite.ts';

/** One row of the table, fixed width: time, aim, what. */
export function rowLine(row: SpeedRow): string {
  return `${duration(row.ms).padStart(11)}  ${aim(row).padEnd(20)}  ${row.what}`;
}

function aim({ ms, aimMs }: SpeedRow): string {
  if (aimMs === undefined) return '';
  return `aim ${duration(aimMs)}: ${ms <= aimMs ? 'met' : 'missed'}`;
}

export function duration(ms: number): string {
  if (ms >= 1000) return `${(ms / 1000).toPrecision(3)} s`;
  return ms >= 1 ? `${ms.toPrecision(3)} ms` : `${(ms * 1000).toPrecision(3)} µs`;
}

export function ratioLines(ratios: readonly Ratio[]): string[] {
  const head = 'The witness (ngspice) takes so many times longer; it gives one bar pair.';
  const of = (times: number, wished?: number) => {
    const said = `${times >= 100 ? Math.round(times) : times.toPrecision(2)}×`;
    return wished === undefined ? said : `${said} (aim ${wished}×: ${times >= wished ? 'met' : 'missed'})`;
  };
  return [
    head,
    ...ratios.flatMap((r) => [
      `  ${r.armature}, readings ${r.apart.toExponential(0)} apart`,
      `    per frequency of a sweep: ${of(r.pointToPair, AIM_POINT)} one pair against one pair, ${of(r.pointToAll)} against every pair`,
      `    per call: ${of(r.callToPair)} one pair against one pair, ${of(r.callToAll, AIM_CALL)} against every pair`,
    ]),
  ];
}
