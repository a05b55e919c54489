/**
 * Networks of plain resistors between named nodes, solved by turning stars into meshes one node at a time. Only sums,
 * products and quotients of positive numbers occur, so milliohms beside hundreds of megohms cost no accuracy.
 */

export interface Resistor {
  readonly a: string;
  readonly b: string;
  /** ohm, > 0; a missing path is a missing resistor, never a large one. */
  readonly ohm: number;
}

/** Resistance between two nodes, ohm; 0 for a node and itself; null where nothing joins them. */
export function resistanceBetween(resistors: readonly Resistor[], a: string, b: string): number | null {
  if (a === b) return 0;
  const mesh = new Mesh(resistors, a, b);
  const conductance = mesh.reduce();
  return conductance > 0 ? 1 / conductance : null;
}

/**
 * Potentials of all nodes against `to` while a current flows in at `from` and out at `to`, V. Nodes that nothing joins
 * to the feed are left out; null where nothing joins the two feeds.
 */
export function potentials(
  resistors: readonly Resistor[],
  from: string,
  to: string,
  currentA: number,
): ReadonlyMap<string, number> | null {
  const mesh = new Mesh(resistors, from, to);
  const conductance = mesh.reduce();
  if (!(conductance > 0)) return null;
  return mesh.spread(currentA / conductance);
}

/** All nodes that resistors join to one, itself among them. */
export function joinedTo(resistors: readonly Resistor[], node: string): ReadonlySet<string> {
  const joined = new Set([node]);
  for (let before = 0; before < joined.size; ) {
    before = joined.size;
    for (const { a, b } of resistors) {
      if (joined.has(a)) joined.add(b);
      else if (joined.has(b)) joined.add(a);
    }
  }
  return joined;
}

/** Conductances between nodes; nodes 0 and 1 are the two that are kept. */
class Mesh {
  private readonly names: string[];
  private readonly g: Float64Array;
  private readonly size: number;

  constructor(resistors: readonly Resistor[], a: string, b: string) {
    this.names = [...new Set([a, b, ...resistors.flatMap((r) => [r.a, r.b])])];
    this.size = this.names.length;
    this.g = new Float64Array(this.size * this.size);
    const index = new Map(this.names.map((name, i) => [name, i]));
    for (const r of resistors) this.join(index.get(r.a)!, index.get(r.b)!, 1 / r.ohm);
  }

  /** Eliminates all nodes but the first two, last first; returns the conductance left between those. */
  reduce(): number {
    for (let k = this.size - 1; k >= 2; k -= 1) this.starToMesh(k);
    return this.at(0, 1);
  }

  /** After `reduce`: potentials with node 0 at `volt` and node 1 at zero. */
  spread(volt: number): ReadonlyMap<string, number> {
    const v = new Float64Array(this.size);
    v[0] = volt;
    for (let k = 2; k < this.size; k += 1) {
      // A node with no neighbour left belongs to an island: 0/0 marks it and all that hang on it.
      let weighted = 0;
      const total = this.below(k);
      for (let i = 0; i < k; i += 1) if (this.at(k, i) > 0) weighted += this.at(k, i) * v[i]!;
      v[k] = weighted / total;
    }
    return new Map(this.names.map((name, i) => [name, v[i]!] as const).filter(([, x]) => !Number.isNaN(x)));
  }

  private starToMesh(k: number): void {
    const total = this.below(k);
    if (total === 0) return;
    for (let i = 0; i < k; i += 1) {
      const share = this.at(k, i) / total;
      if (share === 0) continue;
      for (let j = 0; j < i; j += 1) this.join(i, j, share * this.at(k, j));
    }
  }

  /** Sum of the conductances from a node to those that come before it. */
  private below(k: number): number {
    let total = 0;
    for (let i = 0; i < k; i += 1) total += this.at(k, i);
    return total;
  }

  private at(i: number, j: number): number {
    return this.g[i * this.size + j]!;
  }

  private join(i: number, j: number, conductance: number): void {
    if (i === j) return;
    this.g[i * this.size + j]! += conductance;
    this.g[j * this.size + i]! += conductance;
  }
}
