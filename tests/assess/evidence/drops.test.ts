import { describe, expect, it } from 'vitest';
import { alterationOf } from '../../../src/assess/evidence/alterations.ts';
import { DropPair, shownMv } from '../../../src/assess/evidence/drops.ts';
import { createEvidence } from '../../../src/assess/evidence/model.ts';
import type { DropLaid } from '../../../src/assess/evidence/reading.ts';
import { faultOf, locate, type SuspectPlace } from '../../../src/assess/evidence/suspects.ts';
import { together } from '../../../src/assess/evidence/thevenin.ts';
import { armatureResistors } from '../../../src/engine/instruments/armatureDc.ts';
import { seeMillivolts, underFeed } from '../../../src/engine/instruments/millivoltDrop.ts';
import type { ArmatureDesign } from '../../../src/engine/parts/armature.ts';
import type { ArmatureFault } from '../../../src/engine/parts/armatureFault.ts';
import { armature } from './support/parts.ts';

/**
 * Drops that the evidence engine works out by altering one solved winding, against the network the bench itself solves
 * for every faulted armature, joints, leaks and all.
 */
const PARTS = ['wave-23', 'lap-28', 'lap-24', 'lap-28e', 'wave-23f'] as const;

/** What the bench would show, mV. */
function benchMv(design: ArmatureDesign, faults: readonly ArmatureFault[], { feed, bars }: DropLaid): number {
  const { at } = underFeed(armatureResistors(design, faults), `${feed[0]}`, `${feed[1]}`);
  return seeMillivolts(at.get(`${bars[0]}`)! - at.get(`${bars[1]}`)!).millivolts;
}

/** The feed moved along with the meter, one pole pitch apart, and at bars that have nothing to do with the meter. */
const LAID: readonly DropLaid[] = [
  { feed: [7, 8], bars: [7, 8] },
  { feed: [8, 7], bars: [7, 8] },
  { feed: [2, 9], bars: [4, 5] },
  { feed: [2, 9], bars: [12, 3] },
];

describe('drops', () => {
  it.each(PARTS)('of single faults are those of the bench: %s', (id) => {
    const design = armature(id);
    const { drops, suspects } = createEvidence({ design, mains: '230V50Hz', tests: ['millivolt'] });
    for (const laid of LAID) {
      const { millivolts } = drops.at(laid);
      for (let k = 0; k < suspects.count; k += 11) {
        const at = locate(suspects, k);
        // A fault without odds stands for one that this winding cannot have.
        if (suspects.odds[k] === 0) continue;
        const faults = at === null ? [] : [faultOf(design, at.block, at.place, at.severity)];
        const shown = benchMv(design, faults, laid);
        // A step of the display, and what a parted joint of the altered winding lets through.
        const message = `${JSON.stringify(faults)} ${JSON.stringify(laid)}`;
        expect(Math.abs(millivolts[k]! - shown), message).toBeLessThan(0.006 + 2e-3 * shown);
      }
    }
  });

  it('of two faults at once are those of the bench', () => {
    const design = armature('lap-24');
    const { dictionary, suspects } = createEvidence({ design, mains: '230V50Hz', tests: ['millivolt'] });
    const { winding } = dictionary;
    const solution = dictionary.steady().jointed;
    const alter = ({ block, place, severity }: SuspectPlace) =>
      alterationOf(design, winding, block, place, severity);
    const kinds = ['jointBar', 'openCoil', 'bridge', 'jointOneEnd', 'reversed'];
    const places: SuspectPlace[] = suspects.blocks
      .filter(({ kind }) => kinds.includes(kind))
      .flatMap((block) => [7, 15].map((place) => ({ block, place, severity: block.severities.length >> 1 })));
    for (const one of places.filter(({ place }) => place === 7)) {
      for (const two of places.filter(({ place }) => place === 15)) {
        const faults = [one, two].map(({ block, place, severity }) =>
          faultOf(design, block, place, severity),
        );
        for (const laid of LAID) {
          const volt = new DropPair(solution, design.bars, laid).volt(together(alter(one), alter(two)));
          const shown = benchMv(design, faults, laid);
          const message = `${JSON.stringify(faults)} ${JSON.stringify(laid)}`;
          expect(Math.abs(shownMv(volt) - shown), message).toBeLessThan(0.006 + 2e-3 * shown);
        }
      }
    }
  });
});
