import { type Inductances, newInductances } from '../../../src/engine/circuit/inductance.ts';

/** One case of ngspice-cases.json. */
export interface SpiceCase {
  readonly armature: string;
  readonly theta_slot0_rad: number;
  readonly case: string;
  readonly netlist: readonly string[];
  readonly f_Hz: number;
  readonly spice_bar_V: readonly (readonly [number, number])[];
  readonly spice_Ip_A: number;
  readonly meters: readonly {
    readonly bars: readonly [number, number];
    readonly burden_ohm: number;
    readonly spice_A: number;
  }[];
}

/** A growler and armature as a netlist tells it: coils first, then plain resistors between nodes. */
export interface CoupledCircuit {
  readonly nodes: number;
  readonly branches: readonly { readonly from: number; readonly to: number; readonly ohm: number }[];
  readonly inductive: number;
  /** Coupling of each coil to the whole growler winding, not to one turn. */
  readonly l: Inductances;
  readonly growlerHenry: number;
  readonly growlerOhm: number;
}

/** Reads the lines R, L, K of a case; sources and the 1 Gohm tie of the core only fix potentials and are left out. */
export function readNetlist(lines: readonly string[]): CoupledCircuit {
  const words = lines.filter((line) => !line.startsWith('*')).map((line) => line.split(/\s+/));
  const number = (name: string) => Number(words.find((w) => w[0] === name)?.[3]);
  const coils = words.filter((w) => /^L\d+$/.test(w[0]!));
  const henry = coils.map((w) => Number(w[3]));
  const node = (name: string) => Number(name.slice(1));
  const branches = coils.map((w, k) => {
    const r = words.find((x) => x[0] === `R${k}`)!;
    return { from: node(r[1]!), to: node(w[2]!), ohm: Number(r[3]) };
  });
  for (const w of words.filter((x) => x[0]!.startsWith('RF')))
    branches.push({ from: node(w[1]!), to: node(w[2]!), ohm: Number(w[3]) });
  const n = coils.length;
  const l = newInductances(n);
  henry.forEach((h, k) => {
    l.mutual[k * n + k] = h;
  });
  const growlerHenry = number('LP');
  for (const [name, a, b, k] of words.filter((w) => w[0]!.startsWith('K'))) {
    const i = Number(a!.slice(1));
    if (name!.endsWith('_P')) l.growler[i] = Number(k) * Math.sqrt(henry[i]! * growlerHenry);
    else {
      const j = Number(b!.slice(1));
      const mutual = Number(k) * Math.sqrt(henry[i]! * henry[j]!);
      l.mutual[i * n + j] = mutual;
      l.mutual[j * n + i] = mutual;
    }
  }
  const nodes = 1 + Math.max(...branches.flatMap((b) => [b.from, b.to]), 23);
  return { nodes, branches, inductive: n, l, growlerHenry, growlerOhm: number('RP') };
}
