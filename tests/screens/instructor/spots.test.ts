import { describe, expect, it } from 'vitest';
import { coilPlaces } from '../../../src/engine/parts/winding.ts';
import { difficulties } from '../../../src/scenario/generate.ts';
import { parseScenario } from '../../../src/scenario/parse.ts';
import { armatureView } from '../../../src/scenario/public/view.ts';
import type { PartType } from '../../../src/screens/instructor/desk.ts';
import { moved, outlineOf, sectorOf } from '../../../src/screens/instructor/ring.ts';
import { readInstructorRoute, writeInstructorRoute } from '../../../src/screens/instructor/route.ts';
import { ohmWords, spotWords } from '../../../src/screens/instructor/say.ts';
import {
  kindsAt,
  newFault,
  OHM_RANGE,
  RINGS,
  type Spot,
  spotOf,
  spotsIn,
} from '../../../src/screens/instructor/spots.ts';
import { job, PARTS, type PartId } from '../../support/jobs.ts';

function partType(id: PartId): PartType {
  const design = PARTS.get(id)!;
  return {
    view: armatureView(design),
    turns: design.turns,
    coils: coilPlaces(design),
    difficulties: difficulties(design),
  };
}

const everySpot = (part: PartType): Spot[] =>
  RINGS.flatMap((ring) => Array.from({ length: spotsIn(ring, part) }, (_, n) => ({ ring, n })));

describe.each(['wave-23', 'lap-28', 'lap-24'] as const)('places of %s', (id) => {
  const part = partType(id);

  it('every fault offered at every place is one a scenario may hold, and lies at that place', () => {
    for (const spot of everySpot(part))
      for (const kind of kindsAt(spot, part)) {
        const fault = newFault(kind, spot, part);
        const read = parseScenario(job({ part: id, faults: [fault] }), PARTS);
        expect(read, `${kind} at ${spot.ring} ${spot.n}`).toMatchObject({ ok: true });
        expect(spotOf(fault, part)).toEqual(spot);
      }
  });

  it('both ends of every range of severities are allowed too', () => {
    for (const spot of everySpot(part).filter(({ n }) => n === 1 || n === 0))
      for (const kind of kindsAt(spot, part))
        for (const ohm of OHM_RANGE[kind] ?? []) {
          const fault = { ...newFault(kind, spot, part), ohm } as ReturnType<typeof newFault>;
          expect(parseScenario(job({ part: id, faults: [fault] }), PARTS)).toMatchObject({ ok: true });
        }
  });

  it('arrow keys reach every place from the first bar', () => {
    const seen = new Set<string>();
    for (let spot: Spot = { ring: 'surface', n: 0 }, ring = 0; ring < RINGS.length; ring++) {
      for (let n = 0; n < spotsIn(spot.ring, part); n++) {
        seen.add(`${spot.ring}:${spot.n}`);
        spot = moved(spot, 1, 0, part);
      }
      spot = moved(spot, 0, 1, part);
    }
    expect(seen.size).toBe(everySpot(part).length);
  });

  it('places of one ring do not overlap and each has an outline', () => {
    for (const ring of ['bar', 'gap', 'riser', 'coil', 'slot'] as const) {
      const sectors = Array.from({ length: spotsIn(ring, part) }, (_, n) => sectorOf({ ring, n }, part));
      const sum = sectors.reduce((all, { half }) => all + 2 * half, 0);
      const ways = sectors.map(({ mid }) => ((mid % 360) + 360) % 360).sort((a, b) => a - b);
      const closest = Math.min(
        ...ways.map((way, i) => (i === 0 ? 360 + way - ways.at(-1)! : way - ways[i - 1]!)),
      );
      expect(sum).toBeLessThan(360);
      expect(closest).toBeGreaterThan(2 * Math.max(...sectors.map(({ half }) => half)) - 1e-9);
    }
    for (const spot of everySpot(part)) expect(outlineOf(spot, part)).toMatch(/^M[^N]*Z$/);
  });
});

describe('words and addresses', () => {
  it('a resistance keeps a short figure', () => {
    expect([2e-4, 0.02, 2, 1500, 4e5, 2e6].map(ohmWords)).toEqual([
      ...['0.2 mΩ', '20 mΩ', '2 Ω'],
      ...['1.5 kΩ', '400 kΩ', '2 MΩ'],
    ]);
  });

  it('the last bar’s mica lies against the first', () => {
    expect(spotWords({ ring: 'gap', n: 22 }, 23, 'american')).toBe('the mica between bars 22 and 0');
    expect(spotWords({ ring: 'bar', n: 2 }, 23, 'british')).toBe('segment 2');
  });

  it('an address is read as it was written', () => {
    for (const route of [{ page: 'jobs' }, { page: 'set' }, { page: 'job', id: 'q-1f/2' }] as const)
      expect(readInstructorRoute(writeInstructorRoute(route).replace('#/instructor', ''))).toEqual(route);
    expect(readInstructorRoute('/elsewhere')).toEqual({ page: 'jobs' });
  });
});
