import type { Job } from '../../scenario/public/job.ts';

/** The card's limits that the tests it allows can be held against, one sentence each; empty where there is none. */
export function limitWords({
  limits,
  tests,
  parts,
}: Pick<Job, 'limits' | 'tests' | 'parts'>): readonly string[] {
  const gauged = tests.includes('gauges');
  const commutator = gauged && parts.includes('armature');
  const brushes = gauged && (parts.includes('fieldFrame') || parts.includes('brushPlate'));
  return [
    ...(commutator
      ? [
          `Commutator at least ${mm(limits.commutatorDiameterMm)} across`,
          `run-out at most ${mm(limits.runOutMm)}`,
          `mica at least ${mm(limits.undercutMm)} below the bars`,
        ]
      : []),
    ...(brushes ? [`brushes at least ${mm(limits.brushLengthMm)} long`] : []),
    ...(tests.includes('megohm') ? [`insulation at least ${tidy(limits.insulationMohm)} MΩ`] : []),
  ];
}

function mm(length: number): string {
  return `${tidy(length)} mm`;
}

function tidy(value: number): string {
  return String(Number(value.toFixed(2)));
}
