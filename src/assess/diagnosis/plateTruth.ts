import type { Clue } from '../../bench/observation.ts';
import type { TestKind } from '../../bench/paper.ts';
import { MAINS, type Mains } from '../../engine/drive.ts';
import {
  type BrushPlateDesign,
  type BrushPlateFault,
  brushPlateResistance,
  isInsulated,
  JOB_PLATES,
} from '../../engine/parts/brushPlate.ts';
import { limitsOf } from '../../scenario/public/limits.ts';
import { readsPoor } from './armatureTools.ts';
import { type PlateSeen, plateExpected } from './expected.ts';
import { asOne, type PartAt, shownAt, type TrueFinding } from './finding.ts';
import { namedPlace } from './place.ts';
import { lampLit } from './shown.ts';

/** Lamp from the plate to the fault's own holder, left alone and leaned on. */
function lampAt(plate: BrushPlateDesign, fault: BrushPlateFault, mains: Mains): readonly boolean[] {
  const peakV = Math.SQRT2 * mains.volt;
  return [null, fault.holder].map((pressed) =>
    lampLit(brushPlateResistance(plate, [fault], 'plate:metal', fault.holder, { pressed, peakV }), mains),
  );
}

function toldBy({ scenario, design }: PartAt, plate: BrushPlateDesign, fault: BrushPlateFault): TestKind[] {
  const { tests, mains } = scenario.public;
  const insulated = isInsulated(fault.holder);
  const lamp = lampAt(plate, fault, MAINS[mains]);
  const { insulationMohm } = limitsOf(scenario.public, design);
  const at = (peakV: number) =>
    brushPlateResistance(plate, [fault], 'plate:metal', fault.holder, { pressed: null, peakV });
  const tells: Partial<Record<TestKind, () => boolean>> = {
    plateInsulation: () => insulated && lamp.includes(true),
    plateEarthed: () => !insulated && lamp.includes(false),
    megohm: () => insulated && readsPoor(at, insulationMohm),
  };
  return tests.filter((test) => tells[test]?.() === true);
}

/** What eyes, and work already done, add to what the lamp says. */
function known(at: PartAt, fault: BrushPlateFault): PlateSeen {
  const looked = at.scenario.public.tests.includes('look');
  const clues: readonly Clue[] = looked ? shownAt(at, fault.holder) : [];
  return {
    dirt: clues.includes('dirt'),
    darkened: clues.includes('darkenedInsulator'),
    cleaned: at.condition.done.some(({ remedy }) => remedy === 'cleanPlateInsulation'),
  };
}

/** Dirt on an insulator that has broken down is one finding until it has been cleaned off. */
function keyOf({ fault, cured }: TrueFinding<BrushPlateFault>): string | null {
  const across = fault.kind === 'dirt' || fault.kind === 'insulatorDown';
  return across && !cured ? fault.holder : null;
}

/** The faults the brush plate came with, each judged by what it shows alone. */
export function plateTruth(at: PartAt): TrueFinding<BrushPlateFault>[] {
  const faults = at.scenario.hidden.brushPlate?.faults ?? [];
  return asOne(
    faults.flatMap((fault) => plateFinding(at, fault) ?? []),
    keyOf,
  );
}

/** One fault by itself; null where the job has no brush plate. */
export function plateFinding(at: PartAt, fault: BrushPlateFault): TrueFinding<BrushPlateFault> | null {
  const plate = JOB_PLATES.get(at.scenario.public.brushPlate ?? '');
  if (plate === undefined) return null;
  const told = toldBy(at, plate, fault);
  const lampTells = told.some((test) => test !== 'megohm');
  return {
    fault,
    expected: plateExpected(fault, lampTells, known(at, fault)),
    place: namedPlace([fault.holder], 0),
    toldBy: told,
    cured: !at.condition.brushPlate.includes(fault),
  };
}
