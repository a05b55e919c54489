import type { FieldFrameView, Job } from '../../../scenario/public/job.ts';
import type { ScenarioHidden } from '../../../scenario/scenario.ts';
import { brushName, matPlaceWords } from '../../shared/lineWords.ts';
import type { Vocabulary } from '../../shared/words.ts';
import { ohmWords } from './ohmWords.ts';

/** Faults of field frame, brush plate and bench in words, and wear beyond the card's limits. */

type FieldFault = NonNullable<ScenarioHidden['fieldFrame']>['faults'][number];
type PlateFault = NonNullable<ScenarioHidden['brushPlate']>['faults'][number];
type BenchFault = NonNullable<ScenarioHidden['bench']>['faults'][number];

export function fieldFaultWords(fault: FieldFault, frame: FieldFrameView | null): string {
  const coil = (index: number) => coilWords(index, frame);
  switch (fault.kind) {
    case 'openCoil':
      return `${coil(fault.coil)} is open`;
    case 'brushJoint':
      return `the joint to field brush ${fault.brush} is bad, ${ohmWords(fault.ohm)}`;
    case 'groundedCoil':
      return `${coil(fault.coil)} has gone to the case, ${ohmWords(fault.ohm)}`;
    case 'weakInsulation':
      return `the insulation of ${coil(fault.coil)} leaks to the case, ${ohmWords(fault.ohm)}`;
    case 'shortedTurns':
      return `${Math.round(100 * fault.share)} % of the turns of ${coil(fault.coil)} are shorted, ${ohmWords(fault.ohm)}`;
  }
}

/** A coil by the brush its current goes on to, where that is one only; else by its number on the drawing. */
function coilWords(index: number, frame: FieldFrameView | null): string {
  const brushes = frame === null ? [] : brushesAfter(index, frame);
  const branch = brushes.length === 1 ? ` in the branch to field brush ${brushes[0]}` : '';
  return `coil ${index + 1} of the frame${branch}`;
}

function brushesAfter(index: number, { coils, links }: FieldFrameView): readonly string[] {
  const reached = new Set([coils[index]?.to ?? '']);
  const edges = [...coils, ...links, ...links.map(({ from, to }) => ({ from: to, to: from }))];
  for (let grown = true; grown; ) {
    const next = edges.filter(({ from, to }) => reached.has(from) && !reached.has(to));
    for (const { to } of next) reached.add(to);
    grown = next.length > 0;
  }
  return ['1', '2'].filter((brush) => [...reached].some((node) => node === `end:${brush}`));
}

export function plateFaultWords(fault: PlateFault, vocabulary: Vocabulary): string {
  const holder = matPlaceWords(fault.holder, vocabulary);
  switch (fault.kind) {
    case 'dirt':
      return `packed dirt leads from ${holder} to the plate, ${ohmWords(fault.ohm)}`;
    case 'looseRivet':
      return `a loose rivet at ${holder}: it makes only while the holder is ${fault.makes === 'pressed' ? 'pressed' : 'left alone'}`;
    case 'insulatorDown':
      return `the insulator of ${holder} has broken down, ${ohmWords(fault.ohm)}`;
    case 'brokenPigtail':
      return `the pigtail of the brush in ${holder} is broken`;
  }
}

export function benchFaultWords(fault: BenchFault): string {
  switch (fault.kind) {
    case 'blownLamp':
      return 'the test lamp was blown';
    case 'brokenLead':
      return `a lead was broken inside: ${fault.lead.replace('.', ' probe ')}`;
    case 'crackedHandle':
      return `a handle was cracked: ${fault.lead.replace('.', ' probe ')}`;
    case 'ammeterZero':
      return `the ammeter stood ${Math.round(Math.abs(100 * fault.offset))} % of its scale ${fault.offset > 0 ? 'above' : 'below'} zero with nothing connected`;
  }
}

/** What of the commutator and the brushes lies beyond the card's limits; what the file leaves out is in good order. */
export function commutatorWearWords({ wear }: ScenarioHidden, { limits }: Job): readonly string[] {
  const { commutatorDiameterMm: diameter, runOutMm, undercutMm } = wear ?? {};
  return [
    diameter !== undefined && diameter < limits.commutatorDiameterMm
      ? `the commutator measures ${diameter} mm, less than the ${mm(limits.commutatorDiameterMm)} the card allows`
      : '',
    runOutMm !== undefined && runOutMm > limits.runOutMm
      ? `the commutator runs out by ${runOutMm} mm, more than the ${mm(limits.runOutMm)} the card allows`
      : '',
    undercutMm !== undefined && undercutMm < limits.undercutMm
      ? `the mica lies ${undercutMm} mm below the bars, less than the ${mm(limits.undercutMm)} the card asks for`
      : '',
  ].filter((words) => words !== '');
}

export function brushWearWords(
  { wear }: ScenarioHidden,
  { limits }: Job,
  part: 'fieldFrame' | 'brushPlate',
  vocabulary: Vocabulary,
): readonly string[] {
  const brushes = part === 'fieldFrame' ? ([0, 1] as const) : ([2, 3] as const);
  return brushes.flatMap((brush) => {
    const length = wear?.brushLengthsMm?.[brush];
    if (length === undefined || length >= limits.brushLengthMm) return [];
    return [
      `${brushName(brush, vocabulary)} measures ${length} mm, less than the ${mm(limits.brushLengthMm)} the card asks for`,
    ];
  });
}

function mm(length: number): string {
  return `${Number(length.toFixed(2))} mm`;
}
