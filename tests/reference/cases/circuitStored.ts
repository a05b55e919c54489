import { LoopCircuit } from '../../../src/engine/circuit/loopSolution.ts';
import { type Finding, rowsOf, type WitnessCase, type WitnessGroup, within, worst } from '../case.ts';
import { referenceData } from '../data.ts';
import { solveNodal } from '../support/nodal.ts';
import { readNetlist, type SpiceCase } from '../support/storedNetlist.ts';

const { cases: stored } = referenceData<{ cases: readonly SpiceCase[] }>('ngspice-cases.json');
const VOLT = 230;

function solveLoops(one: SpiceCase) {
  const c = readNetlist(one.netlist);
  const circuit = new LoopCircuit(c);
  const s = circuit.solve(c.l, 2 * Math.PI * one.f_Hz, c.growlerHenry);
  const re = c.growlerOhm + s.ownRe;
  const size = re * re + s.ownIm * s.ownIm;
  const primary = { re: (VOLT * re) / size, im: (-VOLT * s.ownIm) / size };
  return { c, circuit, s, primary, impedance: { re, im: s.ownIm } };
}

/** Thévenin source of two nodes. */
function between({ circuit, s, primary, impedance }: ReturnType<typeof solveLoops>, a: number, b: number) {
  const n = circuit.nodes;
  const tr = s.tRe[a]! - s.tRe[b]!;
  const ti = s.tIm[a]! - s.tIm[b]!;
  const z = (part: Float64Array) => part[a * n + a]! + part[b * n + b]! - 2 * part[a * n + b]!;
  const t2r = tr * tr - ti * ti;
  const t2i = 2 * tr * ti;
  const size = impedance.re ** 2 + impedance.im ** 2;
  return {
    re: tr * primary.re - ti * primary.im,
    im: tr * primary.im + ti * primary.re,
    ohm: z(s.zRe) - (t2r * impedance.re + t2i * impedance.im) / size,
    reactance: z(s.zIm) - (t2i * impedance.re - t2r * impedance.im) / size,
  };
}

function meterA(solved: ReturnType<typeof solveLoops>, a: number, b: number, burdenOhm: number): number {
  const v = between(solved, a, b);
  return Math.hypot(v.re, v.im) / Math.hypot(v.ohm + burdenOhm, v.reactance);
}

function barVolts(one: SpiceCase): Finding {
  const solved = solveLoops(one);
  const bars = one.spice_bar_V.slice(0, one.armature.startsWith('A') ? 23 : 24);
  const ours = bars.flatMap((_, bar) => {
    const v = between(solved, bar, 0);
    return [v.re, v.im];
  });
  const largest = Math.max(...bars.map(([re, im]) => Math.hypot(re, im)));
  return worst(ours, bars.flat(), largest);
}

function growlerCurrent(one: SpiceCase): Finding {
  const { primary } = solveLoops(one);
  return { ours: Math.hypot(primary.re, primary.im), reference: one.spice_Ip_A };
}

function ammeter(one: SpiceCase): Finding {
  const solved = solveLoops(one);
  return worst(
    one.meters.map((m) => meterA(solved, ...m.bars, m.burden_ohm)),
    one.meters.map((m) => m.spice_A),
  );
}

/** The same circuit by a full nodal solution, ammeter connected. */
function nodal(one: SpiceCase): Finding {
  const solved = solveLoops(one);
  const { bars, burden_ohm } = one.meters[0]!;
  const [from, to] = bars;
  const islands = [...new Set(solved.circuit.forest.island)];
  const full = solveNodal(solved.c, 2 * Math.PI * one.f_Hz, VOLT, islands, [{ from, to, ohm: burden_ohm }]);
  const drop = Math.hypot(full.re[from]! - full.re[to]!, full.im[from]! - full.im[to]!);
  return { ours: meterA(solved, from, to, burden_ohm), reference: drop / burden_ohm };
}

const row = rowsOf({
  unit: 'A',
  source: 'ngspice 39, stored ac analysis of a complete netlist',
  verified: 'stored',
  standing: 'independent',
  tolerance: within(1e-6),
});

const rows: WitnessCase[] = stored.flatMap((one, i) => {
  const name = `${one.armature}, ${one.case}`;
  return [
    row(`stored-${i}-growler`, `${name}: growler current`, () => growlerCurrent(one)),
    row(`stored-${i}-volts`, `${name}: worst bar voltage`, () => barVolts(one), { unit: 'V' }),
    row(`stored-${i}-ammeter`, `${name}: worst ammeter reading`, () => ammeter(one)),
    row(`stored-${i}-nodal`, `${name}: ammeter, loop form against full nodal form`, () => nodal(one), {
      source: 'dense modified nodal analysis, written for this test',
      verified: 'calc',
      standing: 'ours',
      tolerance: within(1e-9),
    }),
  ];
});

export const circuitStored: WitnessGroup = {
  title: 'Circuit, against stored results of ngspice',
  about:
    'Netlists and answers kept as they came, nine digits: their inductances are not taken from this program.',
  cases: rows,
};
