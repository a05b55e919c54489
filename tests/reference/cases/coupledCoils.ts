import { newInductances } from '../../../src/engine/circuit/inductance.ts';
import { LoopCircuit } from '../../../src/engine/circuit/loopSolution.ts';
import { type Finding, rowsOf, type WitnessGroup, within, worst } from '../case.ts';
import { acPoint, type Phasor, sizeOf } from '../support/ngspice.ts';

/** A primary of some henries on one source, coupled to coils in a circuit of resistors. */
interface Small {
  readonly volt: number;
  readonly hz: number;
  readonly primaryOhm: number;
  readonly primaryHenry: number;
  readonly coils: readonly { readonly henry: number; readonly toPrimary: number }[];
  /** Coupling factor of two coils. */
  readonly coilToCoil?: (i: number, j: number) => number;
  readonly nodes: number;
  readonly branches: readonly { readonly from: number; readonly to: number; readonly ohm: number }[];
}

/** Primary current and the currents of all branches. */
function solve(small: Small): { primary: Phasor; branch: Phasor[] } {
  const n = small.coils.length;
  const l = newInductances(n);
  small.coils.forEach(({ henry, toPrimary }, i) => {
    l.growler[i] = toPrimary * Math.sqrt(henry * small.primaryHenry);
    small.coils.forEach((other, j) => {
      const k = i === j ? 1 : (small.coilToCoil?.(i, j) ?? 0);
      l.mutual[i * n + j] = k * Math.sqrt(henry * other.henry);
    });
  });
  const circuit = new LoopCircuit({ nodes: small.nodes, branches: small.branches, inductive: n });
  const s = circuit.solve(l, 2 * Math.PI * small.hz, small.primaryHenry);
  const re = small.primaryOhm + s.ownRe;
  const size = re * re + s.ownIm ** 2;
  const primary = { re: (small.volt * re) / size, im: (-small.volt * s.ownIm) / size };
  const part = (y: Float64Array) => circuit.branchCurrents(y.slice(), new Float64Array(small.nodes));
  const yRe = part(s.yRe);
  const yIm = part(s.yIm);
  const branch = Array.from(yRe, (y, i) => ({
    re: y * primary.re - yIm[i]! * primary.im,
    im: y * primary.im + yIm[i]! * primary.re,
  }));
  return { primary, branch };
}

const N01: Small = {
  volt: 230,
  hz: 50,
  primaryOhm: 2,
  primaryHenry: 0.1,
  coils: [{ henry: 20e-6, toPrimary: 0.6 }],
  nodes: 1,
  branches: [{ from: 0, to: 0, ohm: 0.005 }],
};
const N01_LINES = `N01
V1 a 0 DC 0 AC 230
R1 a b 2
L1 b 0 0.1
L2 c 0 20u
R2 c 0 5m
K1 L1 L2 0.6
.ac lin 1 50 50
.end`;

/** Coils L2 and L3, each closed through a resistor: loops of their own. */
const N02: Small = {
  volt: 1,
  hz: 50,
  primaryOhm: 1,
  primaryHenry: 0.01,
  coils: [
    { henry: 0.005, toPrimary: 0.5 },
    { henry: 0.005, toPrimary: 0.4 },
  ],
  coilToCoil: () => 0.3,
  nodes: 2,
  branches: [
    { from: 0, to: 0, ohm: 10 },
    { from: 1, to: 1, ohm: 1e6 },
  ],
};
const N02_LINES = `N02
V1 a 0 DC 0 AC 1
R1 a p 1
L1 p 0 10m
L2 b 0 5m
L3 c 0 5m
R2 b 0 10
R3 c 0 1meg
K12 L1 L2 0.5
K13 L1 L3 0.4
K23 L2 L3 0.3
.ac lin 1 50 50
.end`;

/** Ring of 24 coils, two bars shorted; coils not coupled to one another (no physical set, but a circuit). */
const ring = Array.from({ length: 24 }, (_, i) => ({ from: i, to: (i + 1) % 24, ohm: 0.004 }));
const N03: Small = {
  volt: 120,
  hz: 60,
  primaryOhm: 1.5,
  primaryHenry: 0.05,
  coils: ring.map((_, i) => ({ henry: 20e-6, toPrimary: 0.55 * Math.cos((2 * Math.PI * (i + 0.5)) / 24) })),
  nodes: 24,
  branches: [...ring, { from: 5, to: 6, ohm: 0.001 }],
};

const parts = (p: Phasor) => [p.re, p.im];

function n01(): number[] {
  const { primary, branch } = solve(N01);
  return [...parts(primary), ...parts(branch[0]!)];
}
const N01_STORED = [2.6323188967, -8.583875209, -245.8200661, 168.565589];

/** Primary current and the two node volts, what the closing resistor drops: v = -R·i with i into the dotted end. */
function n02(): number[] {
  const { primary, branch } = solve(N02);
  const volts = [10, 1e6].flatMap((ohm, k) => parts(branch[k]!).map((i) => -ohm * i));
  return [...parts(primary), ...volts];
}
// The last figure ends in ...0877 where it was first written down; ngspice and the loop form agree on ...0897.
const N02_STORED = [0.1017950638, -0.2837142201, 0.3248717427, 0.0620350339, 0.2550252637, 0.0751430877];

async function live(ours: readonly number[], lines: string, names: readonly string[]): Promise<Finding> {
  const point = await acPoint(lines);
  return worst(
    ours,
    names.flatMap((name) => parts(point.get(name)!)),
  );
}

function n03(): Record<'primary' | 'shorted' | 'others', number> {
  const { primary, branch } = solve(N03);
  const amps = branch.slice(0, 24).map(sizeOf);
  const others = amps.filter((_, i) => i !== 5);
  return { primary: sizeOf(primary), shorted: amps[5]!, others: Math.max(...others) };
}

const row = rowsOf({
  unit: 'A',
  source: 'ngspice and mathjs lusolve, alike in every digit kept',
  verified: 'stored',
  standing: 'independent',
  tolerance: within(1e-6),
});
const NOW = { source: 'ngspice 45, ac analysis', verified: 'live' } as const;
const DIGITS = { tolerance: within(5e-4) };

export const coupledCoils: WitnessGroup = {
  title: 'Coupled coils in loop form',
  about: 'Three small coupled circuits whose answers two general-purpose programs give alike.',
  cases: [
    row('N01', 'transformer with a shorted secondary, both currents: worst part', () =>
      worst(n01(), N01_STORED),
    ),
    row('N01-live', 'the same, in this run', () => live(n01(), N01_LINES, ['i(l1)', 'i(l2)']), NOW),
    row(
      'N02',
      'three coupled windings, primary current and two node voltages: worst part',
      () => worst(n02(), N02_STORED),
      { unit: 'A, V' },
    ),
    row('N02-live', 'the same, in this run', () => live(n02(), N02_LINES, ['i(l1)', 'v(b)', 'v(c)']), NOW),
    row(
      'N03-primary',
      'ring of 24 coils, two bars shorted: primary',
      () => ({ ours: n03().primary, reference: 6.3684 }),
      DIGITS,
    ),
    row('N03-coil', 'its shorted coil', () => ({ ours: n03().shorted, reference: 19.0 }), DIGITS),
    row(
      'N03-others',
      'the largest of its other coils',
      () => ({ ours: n03().others, reference: 0.826 }),
      DIGITS,
    ),
  ],
};
