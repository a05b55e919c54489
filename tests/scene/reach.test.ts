import { describe, expect, it } from 'vitest';
import type { Observation } from '../../src/bench/observation.ts';
import { begin } from '../../src/scene/handling/pick.ts';
import { hungSpots, partSpots, toolSpots } from '../../src/scene/handling/targets.ts';
import { HUNG_TOOLS, middle } from '../../src/scene/layout.ts';
import { roundOf } from '../../src/scene/shapes.ts';
import { sampleJob } from '../../tools/scene/samples.ts';
import { at, HOSTS, type HostName, SAMPLES, TryDesk } from './bench.ts';

/** A job with all three parts and every tool there is. */
const WHOLE = {
  ...sampleJob('wave23', 'branches'),
  parts: ['armature', 'fieldFrame', 'brushPlate'] as const,
};
const hosts = Object.keys(HOSTS) as HostName[];

const { rest, insulation, drop, undercut, placed } = SAMPLES as Readonly<Record<string, Observation>>;
/** Tools in use while others are wanted. */
const IN_USE: Readonly<Record<string, Observation>> = {
  nothing: rest!,
  'insulation tester': insulation!,
  'millivolt drop': drop!,
  'both instruments': {
    ...insulation!,
    drop: drop!.drop,
    leads: {
      ...insulation!.leads,
      'drop.1': drop!.leads['drop.1'],
      'drop.2': drop!.leads['drop.2'],
    },
  },
  'a gauge put away': undercut!,
  'the armature in the cradle': placed!,
};

/** What became of a press with a finger in the middle of a tool's place. */
function pressed(host: HostName, seen: Observation, id: string): unknown {
  const desk = new TryDesk(host, seen, WHOLE);
  desk.ui.closeUpShut = true;
  const s = desk.situation();
  const spot = [...hungSpots(s), ...toolSpots(s), ...partSpots(s)].find((each) => each.id === id)!;
  const { x, y, r } = roundOf(spot.shape);
  expect(r * 2, `${id} is large enough for a finger`).toBeGreaterThanOrEqual(24);
  begin(desk, at({ x, y }, 'touch')).end(at({ x, y }, 'touch'));
  return desk.opened[0] ?? desk.ui.armed?.kind ?? desk.took()[0]?.type;
}

describe.each(hosts)('on a %s, every tool is reached', (host) => {
  it.each(Object.keys(IN_USE))('with %s in use', (name) => {
    const seen = IN_USE[name]!;
    for (const tool of HUNG_TOOLS) expect(pressed(host, seen, `tool:${tool}`)).toBe(tool);
    for (const tool of ['strip', 'lens', 'chalk'] as const) expect(pressed(host, seen, tool)).toBe(tool);
  });

  it('the mat, and what stands by, with an instrument in use', () => {
    for (const seen of [insulation!, drop!, IN_USE['both instruments']!]) {
      // The brush plate stands by while the field frame is in front; where the board has its room, it is put back first.
      if (host.endsWith('hone')) expect(pressed(host, seen, 'part:brushPlate')).toBe('part.takeUp');
      const desk = new TryDesk(host, { ...seen, mat: { ...seen.mat, fieldFrame: 'away' } }, WHOLE);
      const { mat, stand } = desk.situation().layout;
      for (const box of [mat, stand]) expect(Math.min(box.w, box.h)).toBeGreaterThanOrEqual(24);
      begin(desk, at(middle(mat), 'touch')).end(at(middle(mat), 'touch'));
      expect(desk.took()).toEqual([{ type: 'armature.place' }]);
    }
  });

  it('what lens or gauge showed is brought back by the small round it was put away to', () => {
    const desk = new TryDesk(host, undercut!, WHOLE);
    const { lens, aside } = desk.situation().layout;
    expect(aside.r * 2).toBeGreaterThanOrEqual(24);
    for (const [round, shut] of [
      [lens, true],
      [aside, false],
    ] as const) {
      begin(desk, at(round, 'touch')).end(at(round, 'touch'));
      expect(desk.ui.closeUpShut).toBe(shut);
    }
    expect(desk.took()).toEqual([]);
  });
});

describe('the strip held over the core', () => {
  it('is taken by its grip in the main view, also while a part lies over the end view', () => {
    const seen: Observation = { ...SAMPLES.strip!, mat: { fieldFrame: 'forward', brushPlate: 'away' } };
    const desk = new TryDesk('desk', seen, WHOLE);
    const { x, y } = roundOf(toolSpots(desk.situation()).find(({ id }) => id === 'strip')!.shape);
    const drag = begin(desk, at({ x, y }));
    drag.move(at({ x: x - 40, y }));
    drag.end(at({ x: x - 40, y }));
    expect(desk.took()).toEqual([{ type: 'strip.away' }]);
  });
});
