import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readLibrary } from '../../src/cli/support/files.ts';
import type { FieldAnswers } from '../../src/cli/support/matAnswers.ts';
import type { Row } from '../../src/cli/support/matrix/cells.ts';
import { figuresOf } from '../../src/cli/support/matrix/figures.ts';
import { fieldRows, plateRows } from '../../src/cli/support/matrix/matRows.ts';
import { matrixArmatures, matrixOf } from '../../src/cli/support/matrix/matrix.ts';
import { matrixPage } from '../../src/cli/support/matrix/page.ts';
import { MATRIX_PAGE, writeMatrix } from '../../src/cli/support/writeMatrix.ts';
import type { ArmatureDesign } from '../../src/engine/parts/armature.ts';
import { TWO_BRANCHES } from '../../src/engine/parts/fieldFrameDesigns.ts';

const library = readLibrary();
if (!library.ok) throw new Error('The parts of the library cannot be read.');
const armatures = matrixArmatures(library.value);
const matrices = armatures.map(matrixOf);
const figures = armatures.map(figuresOf);
/** An equalised winding carries currents when sound, and one with a dummy coil is not alike all round. */
const isPlain = ({ design }: { design: ArmatureDesign }) =>
  !design.equalised && design.dummyPlace === undefined;
const plainFigures = figures.filter(isPlain);
const plain = matrices.filter(isPlain);

function row(id: string, start: string): Row {
  const { rows } = matrices.find(({ design }) => design.id === id)!;
  const found = rows.find(({ name }) => name.startsWith(start));
  if (!found) throw new Error(`No condition of ${id} starts with "${start}".`);
  return found;
}

/** What the ammeter, strip and millivolt drop count, in this order. */
const counts = ({ spaced, neighbour, strip, drop }: Row) => [spaced.places, neighbour.places, strip, drop];
const electrical = (r: Row) => [...counts(r), r.spaced.levelSeen, r.neighbour.levelSeen];

describe('fault and test matrix', () => {
  it('covers every armature of the library and an equalised lap', () => {
    const ids = matrices.map(({ design }) => design.id);
    for (const id of ['wave-23', 'lap-28', 'lap-24']) expect(ids).toContain(id);
    expect(matrices.filter(({ design }) => design.equalised)).toHaveLength(1);
  });

  it('shows nothing on a sound armature', () => {
    for (const { design } of plain) {
      const sound = row(design.id, 'sound');
      expect(electrical(sound)).toEqual([0, 0, 0, 0, false, false]);
      expect([sound.lamp, sound.insulation[250], sound.insulation[500]]).toEqual([0, 0, 0]);
    }
  });

  it('one ground changes no ammeter reading, no strip and no drop; the lamp sees it from every bar', () => {
    for (const { design } of plain) {
      for (const name of ['one bar grounded, 20 mΩ', 'one bar grounded, 0.5 Ω', 'one coil grounded']) {
        const grounded = row(design.id, name);
        expect(electrical(grounded)).toEqual([0, 0, 0, 0, false, false]);
        expect([grounded.lamp, grounded.insulation[250]]).toEqual([design.bars, design.bars]);
      }
    }
    expect(row('lap-24', 'two bars a pole pitch apart grounded, 20').neighbour.places).toBeGreaterThan(0);
  });

  it('an open coil shows at as many pairs as coils lie between neighbouring bars, and never by strip or lamp', () => {
    const pairs = { 'wave-23': 2, 'lap-28': 1, 'lap-24': 1 };
    for (const [id, places] of Object.entries(pairs)) {
      const open = row(id, 'coil open');
      const off = row(id, 'one coil end off');
      expect([open.neighbour.places, open.drop, open.strip, open.lamp]).toEqual([places, places, 0, 0]);
      expect(electrical(off)).toEqual(electrical(open));
    }
  });

  it('one ground changes no reading, a single open coil no open-circuit voltage', () => {
    for (const { groundChange, openVoltChange } of plainFigures) {
      expect(groundChange).toBeLessThan(1e-9);
      expect(openVoltChange).toBeLessThan(1e-9);
    }
  });

  it('a hard bridge falls further than an open coil, a soft one hardly', () => {
    for (const { design, lowest } of plainFigures) {
      expect(lowest.hard, design.id).toBeLessThan(lowest.open);
      if (design.turns === 1) expect(lowest.soft).toBeGreaterThan(0.97);
    }
  });

  it('a bad riser joint shows at the two pairs of its bar, by ammeter and by drop', () => {
    for (const { design } of plain) {
      for (const grade of ['20 mΩ', '500 mΩ']) {
        const bad = row(design.id, `riser joint to its bar, ${grade}`);
        expect([bad.neighbour.places, bad.drop, bad.strip, bad.lamp]).toEqual([2, 2, 0, 0]);
      }
      expect(row(design.id, 'riser joint to its bar open').neighbour.places).toBe(2);
    }
  });

  it('a hard bridge is seen by ammeter, strip and drop; a soft one by nothing', () => {
    for (const { design } of plain) {
      const hard = row(design.id, 'bars bridged by copper, 0.2 mΩ');
      for (const places of counts(hard)) expect(places).toBeGreaterThan(0);
      expect(electrical(row(design.id, 'bars bridged by carbon, 1 Ω'))).toEqual([0, 0, 0, 0, false, false]);
    }
    for (const id of ['wave-23', 'lap-28'])
      expect(electrical(row(id, 'bars bridged by copper, 50 mΩ'))).toEqual([0, 0, 0, 0, false, false]);
  });

  it('the strip is useless on an equalised lap: it pulls all round, sound or faulty alike', () => {
    const { rows, design } = matrices.find((m) => m.design.equalised)!;
    for (const r of rows) expect(r.strip, r.name).toBe(design.slots);
    expect(row('lap-28', 'sound').strip).toBe(0);
  });

  it('the lamp sees a ground and gross leakage only; the tester sees the rest, and 500 V what 250 V does not', () => {
    for (const { design } of plain) {
      const weak = (grade: string) => row(design.id, `weak insulation, ${grade}`);
      expect(weak('10 kΩ').lamp).toBe(design.bars);
      expect([weak('100 kΩ').lamp, weak('100 kΩ').insulation[250]]).toEqual([0, design.bars]);
      expect(weak('500 kΩ').insulation[250]).toBe(design.bars);
      const breaking = weak('5 MΩ, breaking');
      expect([breaking.lamp, breaking.insulation[250], breaking.insulation[500]]).toEqual([
        0,
        0,
        design.bars,
      ]);
    }
  });

  it('one shorted turn of six shows by drop and not by strip', () => {
    const one = row('lap-24', '1 of 6 turns');
    expect([one.strip, one.drop]).toEqual([0, 1]);
  });

  it('dirt lowers the whole turn and marks no place', () => {
    for (const { design } of plain) {
      const dirty = row(design.id, 'dirty');
      expect(counts(dirty)).toEqual([0, 0, 0, 0]);
      expect(dirty.neighbour.level).toBeLessThan(-0.05);
    }
  });

  it('is the page of the docs: run `npm run -s matrix` when the engine has changed', () => {
    expect(readFileSync(MATRIX_PAGE, 'utf8')).toBe(matrixPage(matrices, figures));
  });
});

it('the command takes no arguments', () => {
  expect(writeMatrix(['x'])).toMatchObject({ code: 2, err: ['Usage: npm run -s matrix (no arguments)'] });
});

describe('fault and test matrix of field frames and brush plate', () => {
  const two = fieldRows(TWO_BRANCHES);
  const field = (start: string) => two.find(({ name }) => name.startsWith(start))!.shown;
  const plate = (name: string) => plateRows().find((one) => one.name === name)!.shown;
  const lit = ({ lamp }: FieldAnswers, from: string) =>
    lamp.filter((one) => one.from === from).map((one) => one.lit);

  it('a broken branch is dark at its own brush, unless the brushes touch', () => {
    for (const name of ['coil open', 'joint of brush 1 open']) {
      const shown = field(name);
      expect(lit(shown, 'field:terminal')).toEqual([false, true]);
      expect(shown.lamp.filter(({ from }) => from === 'field:terminal')).toEqual(
        field('sound')
          .lamp.slice(0, 2)
          .map((one, n) => ({ ...one, lit: n === 1 })),
      );
      expect(shown.drop_mV[0]!.mV).toBe('no current');
    }
  });

  it('shorted turns show in the drop of their branch and nowhere else', () => {
    const sound = field('sound');
    for (const name of ['a fifth', 'half']) {
      const shown = field(name);
      expect(shown.lamp).toEqual(sound.lamp);
      expect(shown.megohms).toEqual(sound.megohms);
      expect(Number(shown.drop_mV[0]!.mV)).toBeLessThan(0.95 * Number(sound.drop_mV[0]!.mV));
      expect(shown.drop_mV[1]).toEqual(sound.drop_mV[1]);
    }
  });

  it('a ground lights from both brushes, through the terminal; poor insulation leaves the lamp dark', () => {
    expect(lit(field('coil grounded in its middle, 0.5'), 'field:case')).toEqual([true, true]);
    const poor = field('weak insulation, 300');
    expect(lit(poor, 'field:case')).toEqual([false, false]);
    expect(poor.megohms.map((one) => one[250])).toEqual([0.3, 0.3]);
  });

  it('a rivet shows only when its holder is leant on and let go; dirt and a breakdown look alike', () => {
    const moves = plateRows().filter(({ shown }) => shown.lamp.some((one) => one.lit !== one.lit_leant_on));
    expect(moves.every(({ name }) => name.startsWith('rivet'))).toBe(true);
    expect(moves).toHaveLength(4);
    expect(plate('dirt across insulated holder 1, 50 Ω')).toEqual(plate('insulator of holder 1 down, 50 Ω'));
  });
});
