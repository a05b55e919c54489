import { describe, expect, it } from 'vitest';
import { dialFor, handAngle, ruledFor } from '../../src/scene/gaugeShape.ts';
import { begin } from '../../src/scene/handling/pick.ts';
import { allPlaces } from '../../src/scene/handling/places.ts';
import { at, HOSTS, type HostName, SAMPLES, TryDesk } from './bench.ts';

const hosts = Object.keys(HOSTS) as HostName[];
const READ = [
  { gauge: 'diameter', mm: 37.6 },
  { gauge: 'runOut', mm: 0.14 },
  { gauge: 'runOut', mm: 1.2 },
  { gauge: 'undercut', mm: 0.65 },
  { gauge: 'undercut', mm: 3 },
] as const;

describe('the dial of a gauge', () => {
  it.each(READ)('of $gauge at $mm mm is read by its own figures', ({ gauge, mm }) => {
    const dial = dialFor(gauge, mm);
    const perFigure = dial.turnMm / dial.figures.length;
    dial.figures.forEach((figure, i) => {
      expect(Number(figure)).toBeCloseTo(i * perFigure);
    });
    // The stroke the hand stands on, counted on from the figure before it.
    const turned = handAngle(dial, mm) / (2 * Math.PI);
    const within = (turned % 1) * dial.turnMm;
    const before = Math.floor(within / perFigure + 1e-9);
    const strokes = (within - before * perFigure) / dial.strokeMm;
    expect(strokes).toBeCloseTo(Math.round(strokes));
    const whole = Math.floor(turned + 1e-9) * dial.turnMm;
    expect(whole + Number(dial.figures[before]) + Math.round(strokes) * dial.strokeMm).toBeCloseTo(mm);
  });

  it('goes round once for every 10 mm of diameter, and never for less than it shows', () => {
    expect(handAngle(dialFor('diameter', 40), 40)).toBeCloseTo(8 * Math.PI);
    for (const { gauge, mm } of READ)
      if (gauge !== 'diameter') expect(dialFor(gauge, mm).turnMm).toBeGreaterThan(mm);
  });
});

describe('a rule', () => {
  it.each([6, 14, 38, 60, 200])('is longer than the %s mm laid to it', (mm) => {
    expect(ruledFor(mm).spanMm).toBeGreaterThan(mm);
  });
});

describe.each(hosts)('a gauge at the part on a %s', (host) => {
  it('is put out of the way by a press on it, and taken up again from the rail', () => {
    const desk = new TryDesk(host, SAMPLES.undercut!);
    const { lens } = desk.situation().layout;
    begin(desk, at(lens)).end(at(lens));
    expect(desk.ui.closeUpShut).toBe(true);
    expect(desk.took()).toEqual([]);
    const hook = allPlaces(desk.situation()).find(({ id }) => id === 'tool:gauges')!;
    begin(desk, at(hook)).end(at(hook));
    expect(desk.ui.closeUpShut).toBe(false);
  });
});
