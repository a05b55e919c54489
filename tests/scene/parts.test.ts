import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { FIELD_PLACES, PLATE_PLACES } from '../../src/bench/places.ts';
import { begin } from '../../src/scene/handling/pick.ts';
import { allPlaces } from '../../src/scene/handling/places.ts';
import { partSpots } from '../../src/scene/handling/targets.ts';
import { boardContacts } from '../../src/scene/pose.ts';
import { distanceTo, roundOf } from '../../src/scene/shapes.ts';
import { sampleJob, samples } from '../../tools/scene/samples.ts';
import { at, HOSTS, type HostName, situation, TryDesk } from './bench.ts';

const JOB = sampleJob('wave23', 'branches');
const SEEN = samples(JOB);
const hosts = Object.keys(HOSTS) as HostName[];

function find(desk: TryDesk, id: string) {
  const spot = allPlaces(desk.situation()).find((p) => p.id === id);
  if (!spot) throw new Error(`nothing is called ${id}`);
  return spot;
}

function click(desk: TryDesk, id: string): void {
  const p = find(desk, id);
  begin(desk, at(p)).end(at(p));
}

beforeEach(() => vi.useFakeTimers());
afterEach(() => vi.useRealTimers());

describe.each(hosts)('a part taken up, on a %s', (host) => {
  it.each([
    ['frame', FIELD_PLACES],
    ['frameTest', FIELD_PLACES],
    ['plate', PLATE_PLACES],
  ] as const)('shows every contact apart from the others (%s)', (name, places) => {
    const s = situation(host, SEEN[name]!, JOB);
    const contacts = boardContacts(s);
    expect(contacts.map(({ place }) => place).sort()).toEqual([...places].sort());
    for (const { place, shape } of contacts) {
      const middle = roundOf(shape);
      expect(middle.r * 2, place).toBeGreaterThanOrEqual(24);
      for (const other of contacts)
        if (other.place !== place) expect(distanceTo(other.shape, middle)).toBeGreaterThan(8);
      expect(distanceTo({ kind: 'box', ...s.layout.board }, middle)).toBe(0);
    }
  });

  it('leaves room for what takes it up, puts it back and keeps its brushes apart', () => {
    for (const name of ['rest', 'frame']) {
      for (const { id, shape } of partSpots(situation(host, SEEN[name]!, JOB))) {
        expect(roundOf(shape).r * 2, id).toBeGreaterThanOrEqual(24);
      }
    }
  });
});

describe('the parts beside the armature', () => {
  it('are taken up, handled and put back', () => {
    const desk = new TryDesk('desk', SEEN.placed!, JOB);
    click(desk, 'part:fieldFrame');
    click(desk, 'brushes');
    click(desk, 'brushes');
    click(desk, 'part:putBack');
    expect(desk.took()).toEqual([
      { type: 'part.takeUp', part: 'fieldFrame' },
      { type: 'brushes.part' },
      { type: 'brushes.join' },
      { type: 'part.putBack', part: 'fieldFrame' },
    ]);
  });

  it('are touched by the lamp leads', () => {
    const desk = new TryDesk('desk', SEEN.frame!, JOB);
    click(desk, 'lead:lamp.1:handle');
    click(desk, 'field:terminal');
    expect(desk.took().at(-1)).toEqual({ type: 'lead.touch', lead: 'lamp.1', place: 'field:terminal' });
  });

  it('cover the end view: nothing under the board can be reached through it', () => {
    const desk = new TryDesk('desk', SEEN.plate!, JOB);
    expect(allPlaces(desk.situation()).some((p) => p.view === 'end')).toBe(false);
    const { end } = desk.situation().layout;
    begin(desk, at({ x: end.x + end.core, y: end.y })).end(at({ x: end.x + end.core, y: end.y }));
    expect(desk.took()).toEqual([]);
  });

  it('cover the end view of a phone whole: cradle, stand and leads on the armature with it', () => {
    const mat = SEEN.frame!.mat;
    const open = new TryDesk('phone', SEEN.stand!, JOB);
    const covered = new TryDesk('phone', { ...SEEN.stand!, mat }, JOB);
    const ids = (desk: TryDesk) => allPlaces(desk.situation()).map(({ id }) => id);
    const hidden = ids(open).filter((id) => !ids(covered).includes(id));
    for (const id of ['cradle', 'stand', 'lead:ammeter.1:handle', 'tip:ammeter.2', 'handle:ammeter.1'])
      expect(hidden).toContain(id);
    expect(ids(covered)).toContain('lead:lamp.1:handle');
    const empty = new TryDesk('phone', { ...SEEN.rest!, mat }, JOB);
    const { end } = empty.situation().layout;
    begin(empty, at(end)).end(at(end));
    expect(empty.took()).toEqual([]);
  });

  it('are leant on while a handle is held down, and eased off when it is let go', () => {
    const desk = new TryDesk('desk', SEEN.plate!, JOB);
    const p = find(desk, 'lead:lamp.2:handle');
    const gesture = begin(desk, at(p));
    vi.advanceTimersByTime(499);
    expect(desk.took()).toEqual([]);
    vi.advanceTimersByTime(2);
    expect(desk.took()).toEqual([{ type: 'lead.lean', lead: 'lamp.2', on: true }]);
    gesture.end(at(p));
    expect(desk.took()).toEqual([{ type: 'lead.lean', lead: 'lamp.2', on: false }]);
    expect(desk.ui.armed).toBeNull();
  });

  it('stand nowhere when the job has none', () => {
    const s = situation('desk', { ...SEEN.rest!, mat: { fieldFrame: 'absent', brushPlate: 'absent' } });
    expect(partSpots(s)).toEqual([]);
  });

  it('and the bench itself can be looked at', () => {
    const desk = new TryDesk('desk', SEEN.plate!, JOB);
    click(desk, 'lens');
    click(desk, 'lampBulb');
    click(desk, 'plate:earthed2');
    expect(desk.took()).toEqual([
      { type: 'lens.look', place: 'lampBulb' },
      { type: 'lens.look', place: 'plate:earthed2' },
    ]);
  });
});
