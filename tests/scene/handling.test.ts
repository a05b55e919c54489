import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { barPlace } from '../../src/bench/places.ts';
import { UNTOUCHED } from '../../src/bench/untouched.ts';
import { begin } from '../../src/scene/handling/pick.ts';
import { allPlaces } from '../../src/scene/handling/places.ts';
import { stripPlaceAt } from '../../src/scene/handling/stripDrag.ts';
import { stripAtEnd } from '../../src/scene/handling/stripSpots.ts';
import { settle, softDetent } from '../../src/scene/handling/turn.ts';
import type { Point } from '../../src/scene/project.ts';
import { at, SAMPLES, situation, TryDesk } from './bench.ts';

const PLACED = SAMPLES.placed!;

function find(desk: TryDesk, id: string, view?: string): Point {
  const spot = allPlaces(desk.situation()).find((p) => p.id === id && (!view || p.view === view));
  if (!spot) throw new Error(`nothing is called ${id}`);
  return spot;
}

function frontBar(desk: TryDesk, nth = 0): { id: string } & Point {
  return allPlaces(desk.situation())
    .filter((p) => p.view === 'side' && p.id.startsWith('bar:'))
    .sort((a, b) => b.r - a.r)[nth]!;
}

function drag(desk: TryDesk, from: Point, to: Point, kind: 'mouse' | 'touch' = 'mouse', id = 1): void {
  const gesture = begin(desk, at(from, kind, id));
  for (let i = 1; i <= 6; i++) {
    gesture.move(
      at({ x: from.x + ((to.x - from.x) * i) / 6, y: from.y + ((to.y - from.y) * i) / 6 }, kind, id),
    );
  }
  gesture.end(at(to, kind, id));
}

const click = (desk: TryDesk, p: Point) => begin(desk, at(p)).end(at(p));

beforeEach(() => vi.useFakeTimers());
afterEach(() => vi.useRealTimers());

describe('a lead dragged by its handle', () => {
  it('is taken when it moves and touches where it is let go', () => {
    const desk = new TryDesk('desk', PLACED);
    const bar = frontBar(desk);
    drag(desk, find(desk, 'lead:lamp.1:handle'), bar);
    expect(desk.took()).toEqual([
      { type: 'lead.take', lead: 'lamp.1', grip: 'handle' },
      { type: 'lead.touch', lead: 'lamp.1', place: bar.id },
    ]);
  });

  it('stays in the hand when it is let go over nothing', () => {
    const desk = new TryDesk('desk', PLACED);
    drag(desk, find(desk, 'lead:lamp.1:handle'), { x: 560, y: 480 });
    expect(desk.took()).toEqual([{ type: 'lead.take', lead: 'lamp.1', grip: 'handle' }]);
    expect(desk.ui.leads['lamp.1']).toEqual({ x: 560, y: 480 });
  });

  it('leaves the metal as it is drawn away and goes back to its holster', () => {
    const desk = new TryDesk('desk', SAMPLES.spaced!);
    drag(desk, find(desk, 'lead:ammeter.2:handle'), find(desk, 'holster:ammeter.2'));
    expect(desk.took().map((action) => action.type)).toEqual(['lead.lift', 'lead.holster']);
  });

  it('never finds a home in the other set’s holster', () => {
    const desk = new TryDesk('desk', PLACED);
    drag(desk, find(desk, 'lead:lamp.1:handle'), find(desk, 'holster:ammeter.1'));
    expect(desk.took().some((action) => action.type === 'lead.holster')).toBe(false);
  });

  it('keeps its bar when it is put into the stand', () => {
    const desk = new TryDesk('desk', SAMPLES.spaced!);
    const before = desk.seen.leads['ammeter.1'].touches;
    drag(desk, find(desk, 'lead:ammeter.1:handle'), find(desk, 'stand'));
    expect(desk.took().at(-1)).toEqual({ type: 'lead.clamp', lead: 'ammeter.1' });
    expect(desk.seen.leads['ammeter.1'].touches).toBe(before);
  });

  it('touches the partner’s tip to prove the lamp', () => {
    const desk = new TryDesk('desk', PLACED);
    drag(desk, find(desk, 'lead:lamp.1:handle'), { x: 560, y: 480 });
    desk.took();
    drag(desk, find(desk, 'lead:lamp.2:handle'), { x: 560, y: 480 });
    expect(desk.took().at(-1)).toEqual({ type: 'lead.touch', lead: 'lamp.2', place: 'tip:lamp.1' });
  });

  it('does nothing more when the bench refuses it', () => {
    const desk = new TryDesk('desk', PLACED);
    desk.refuses.add('lead.take');
    drag(desk, find(desk, 'lead:lamp.1:handle'), frontBar(desk));
    expect(desk.took()).toEqual([]);
    expect(desk.ui.dragging.size).toBe(0);
  });
});

describe('a lead picked by a click', () => {
  it('goes where the next click falls', () => {
    const desk = new TryDesk('desk', PLACED);
    click(desk, find(desk, 'lead:ammeter.1:handle'));
    const bar = find(desk, frontBar(desk).id, 'end');
    click(desk, bar);
    expect(desk.took().map((action) => action.type)).toEqual(['lead.take', 'lead.touch']);
    expect(desk.ui.armed).toBeNull();
  });

  it('is lifted from one bar before it is put on another', () => {
    const desk = new TryDesk('desk', SAMPLES.spaced!);
    click(desk, find(desk, 'lead:ammeter.1:handle'));
    click(desk, find(desk, barPlace(10), 'end'));
    expect(desk.took().map((action) => action.type)).toEqual(['lead.lift', 'lead.touch']);
  });

  it('lets the other hand turn the selector meanwhile', () => {
    const desk = new TryDesk('desk', PLACED);
    click(desk, find(desk, 'lead:lamp.1:handle'));
    click(desk, find(desk, 'selector:low'));
    expect(desk.took().at(-1)).toEqual({ type: 'selector.turn', to: 'low' });
  });
});

describe('a bare tip', () => {
  it('costs nothing when it is let go before 400 ms', () => {
    const desk = new TryDesk('desk', PLACED);
    const tip = find(desk, 'lead:lamp.1:tip');
    const gesture = begin(desk, at(tip));
    expect(desk.ui.tipHold).not.toBeNull();
    vi.advanceTimersByTime(399);
    gesture.end(at(tip));
    vi.advanceTimersByTime(1000);
    expect(desk.took()).toEqual([]);
    expect(desk.ui.tipHold).toBeNull();
  });

  it('is taken after 400 ms', () => {
    const desk = new TryDesk('desk', PLACED);
    begin(desk, at(find(desk, 'lead:lamp.1:tip')));
    vi.advanceTimersByTime(401);
    expect(desk.took()).toEqual([{ type: 'lead.take', lead: 'lamp.1', grip: 'tip' }]);
  });
});

describe('two fingers', () => {
  it('carry two probes, and each sets its own down when it rests', () => {
    const desk = new TryDesk('desk', PLACED);
    const finger = (lead: 'ammeter.1' | 'ammeter.2', id: number, nth: number) => {
      const from = find(desk, `lead:${lead}:handle`);
      const to = frontBar(desk, nth);
      const gesture = begin(desk, at(from, 'touch', id));
      gesture.move(at({ x: from.x + 20, y: from.y - 40 }, 'touch', id));
      gesture.move(at({ x: to.x + 26, y: to.y + 40 }, 'touch', id));
      return gesture;
    };
    finger('ammeter.1', 1, 0);
    finger('ammeter.2', 2, 4);
    expect(desk.ui.aims.size).toBe(2);
    vi.advanceTimersByTime(600);
    const touched = desk.took().filter((action) => action.type === 'lead.touch');
    expect(touched.map((action) => action.lead).sort()).toEqual(['ammeter.1', 'ammeter.2']);
  });
});

describe('turning', () => {
  it('lays a hand on, turns the way the hand goes and lets go', () => {
    const desk = new TryDesk('desk', PLACED);
    const p = find(desk, 'core:turn', 'side');
    const gesture = begin(desk, at(p));
    for (let i = 1; i <= 10; i++) {
      desk.clock += 50;
      gesture.move(at({ x: p.x, y: p.y + i * 6 }));
    }
    gesture.end(at({ x: p.x, y: p.y + 60 }));
    const sent = desk.took();
    expect(sent[0]).toEqual({ type: 'armature.hold' });
    expect(sent.at(-1)).toEqual({ type: 'armature.release' });
    const turned = sent.flatMap((action) => (action.type === 'armature.turn' ? [action.byDeg] : []));
    expect(turned.reduce((sum, by) => sum + by, 0)).toBeGreaterThan(15);
  });

  it('goes no further when both hands are full', () => {
    const desk = new TryDesk('desk', PLACED);
    desk.refuses.add('armature.hold');
    const p = find(desk, 'core:turn', 'side');
    drag(desk, p, { x: p.x, y: p.y + 60 });
    expect(desk.took()).toEqual([]);
    expect(desk.ui.turning).toBe(0);
  });

  it('has detents that are continuous, rising and true to whole bars', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -400, max: 400, noNaN: true }),
        fc.integer({ min: 15, max: 60 }),
        (deg, bars) => {
          const pitch = 360 / bars;
          const step = softDetent(deg + 0.01, pitch) - softDetent(deg, pitch);
          expect(step).toBeGreaterThanOrEqual(-1e-9);
          expect(step).toBeLessThan(0.02);
          expect(Math.abs(settle(deg, pitch) - deg)).toBeLessThanOrEqual(pitch * 0.33);
        },
      ),
    );
    expect(softDetent(36.4, 12)).toBe(36);
    expect(settle(38, 12)).toBe(36);
    expect(settle(41, 12)).toBe(41);
  });
});

describe('the strip', () => {
  it('is held at the angle and height it is drawn at', () => {
    const s = situation('desk', PLACED);
    for (let deg = 65; deg <= 295; deg += 10) {
      expect(stripPlaceAt(s, stripAtEnd(s, deg, 0.5))).toEqual({ angleDeg: deg, heightMm: 0.5 });
    }
    expect(stripPlaceAt(s, stripAtEnd(s, 180, 4))!.heightMm).toBeGreaterThan(1);
  });

  it('is taken, held, drawn away and hung up', () => {
    const desk = new TryDesk('desk', PLACED);
    drag(desk, find(desk, 'strip'), find(desk, 'strip-at:200'));
    const first = desk.took();
    expect(first[0]).toEqual({ type: 'strip.take' });
    expect(first.at(-1)).toEqual({ type: 'strip.hold', angleDeg: 200, heightMm: 0.5 });
    drag(desk, find(desk, 'strip'), { x: 100, y: 40 });
    expect(
      desk
        .took()
        .map((action) => action.type)
        .slice(-2),
    ).toEqual(['strip.away', 'strip.hang']);
  });
});

describe('the armature', () => {
  it('is carried from the mat into the cradle', () => {
    const desk = new TryDesk('desk', UNTOUCHED);
    drag(desk, find(desk, 'mat'), find(desk, 'cradle'));
    expect(desk.took()).toEqual([{ type: 'armature.place' }]);
  });

  it('is lifted by its shaft, and stays where it is when the shaft is only nudged', () => {
    const desk = new TryDesk('desk', PLACED);
    const grip = find(desk, 'armature:lift');
    drag(desk, grip, { x: grip.x, y: grip.y - 20 });
    expect(desk.took()).toEqual([]);
    drag(desk, grip, find(desk, 'mat'));
    expect(desk.took()).toEqual([{ type: 'armature.lift' }]);
  });

  it('lies back down when it is let go over the cradle again', () => {
    const desk = new TryDesk('desk', PLACED);
    const grip = find(desk, 'armature:lift');
    const gesture = begin(desk, at(grip));
    gesture.move(at({ x: grip.x, y: grip.y - 80 }));
    gesture.move(at(find(desk, 'cradle')));
    gesture.end(at(find(desk, 'cradle')));
    expect(desk.took().map((action) => action.type)).toEqual(['armature.lift', 'armature.place']);
  });
});

describe('lens and chalk', () => {
  it('look at a riser and mark a bar, by dragging or by two clicks', () => {
    const desk = new TryDesk('desk', PLACED);
    const riser = allPlaces(desk.situation()).find((p) => p.id.startsWith('riser:') && p.view === 'side')!;
    drag(desk, find(desk, 'lens'), riser);
    expect(desk.took()).toEqual([{ type: 'lens.look', place: riser.id }]);
    click(desk, find(desk, 'chalk'));
    const bar = frontBar(desk);
    click(desk, bar);
    expect(desk.took()).toEqual([{ type: 'chalk.mark', bar: Number(bar.id.slice(4)) }]);
  });
});
