import type { ArmatureDesign } from '../../engine/parts/armature.ts';
import type { PartLibrary } from '../../scenario/scenario.ts';
import { calibrateWorld, readFieldTables } from './calibrate.ts';
import { pitchesOf } from './finiteElements.ts';
import { BELIEVED, finiteElementWorld, MIS_SPECIFIED, type World } from './worlds.ts';

/** One world to be tried, with the armatures it knows and where they may come to lie. */
export interface Run {
  readonly world: World;
  readonly designs: readonly ArmatureDesign[];
  /** Shares of a slot pitch. */
  offsetsOf(design: ArmatureDesign): readonly number[];
}

/** One of each winding of the workshop. */
const TRIED = ['wave-23', 'lap-28', 'lap-24'];
const OFFSETS = [0, 0.125, 0.25, 0.5];

export function runsOf(library: PartLibrary): Run[] {
  const designs = [...library.values()].filter(({ id }) => TRIED.includes(id));
  const tables = readFieldTables();
  return [
    ...[BELIEVED, ...MIS_SPECIFIED].map((world) => ({ world, designs, offsetsOf: () => OFFSETS })),
    {
      world: finiteElementWorld(tables),
      designs: designs.filter((design) => pitchesOf(tables, design).length > 0),
      offsetsOf: (design) => pitchesOf(tables, design),
    },
  ];
}

export function tryRun({ world, designs, offsetsOf }: Run, attempts: number) {
  return calibrateWorld(world, designs, offsetsOf, attempts).tried;
}
