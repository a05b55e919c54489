/** A branch as the forest sees it: its two nodes. */
export interface Branch {
  readonly from: number;
  readonly to: number;
}

/**
 * Spanning forest of a circuit. Branches come in earlier first, so coils make the trees and resistors that only
 * close loops stay outside; a node without any branch is an island of its own.
 */
export interface Forest {
  /** Every node once, parents before children. */
  readonly order: Int32Array;
  /** Parent of each node, -1 at a root; the branch to it and +1 when that branch runs from the node to its parent. */
  readonly parent: Int32Array;
  readonly edge: Int32Array;
  readonly sign: Int8Array;
  /** Root of each node: nodes with the same root belong to the same island. */
  readonly island: Int32Array;
  /** Branches outside the forest; each closes one loop. */
  readonly cotree: Int32Array;
}

/** @param branches nodes of each branch, 0..nodes-1 */
export function spanningForest(nodes: number, branches: readonly Branch[]): Forest {
  const group = Int32Array.from({ length: nodes }, (_, i) => i);
  const neighbours: number[][] = Array.from({ length: nodes }, () => []);
  const cotree: number[] = [];
  branches.forEach(({ from, to }, b) => {
    const x = find(group, from);
    const y = find(group, to);
    if (x === y) cotree.push(b);
    else {
      group[Math.max(x, y)] = Math.min(x, y);
      neighbours[from]!.push(b);
      neighbours[to]!.push(b);
    }
  });
  return { ...walk(nodes, branches, neighbours), cotree: Int32Array.from(cotree) };
}

function find(group: Int32Array, node: number): number {
  let n = node;
  while (group[n] !== n) {
    group[n] = group[group[n]!]!;
    n = group[n]!;
  }
  return n;
}

function walk(
  nodes: number,
  branches: readonly Branch[],
  neighbours: readonly (readonly number[])[],
): Omit<Forest, 'cotree'> {
  const order = new Int32Array(nodes);
  const parent = new Int32Array(nodes).fill(-1);
  const edge = new Int32Array(nodes).fill(-1);
  const sign = new Int8Array(nodes);
  const island = new Int32Array(nodes).fill(-1);
  let filled = 0;
  for (let root = 0; root < nodes; root++) {
    if (island[root] !== -1) continue;
    island[root] = root;
    let next = filled;
    order[filled++] = root;
    while (next < filled) {
      const at = order[next++]!;
      for (const b of neighbours[at]!) {
        if (b === edge[at]) continue;
        const { from, to } = branches[b]!;
        const child = from === at ? to : from;
        parent[child] = at;
        edge[child] = b;
        sign[child] = from === child ? 1 : -1;
        island[child] = root;
        order[filled++] = child;
      }
    }
  }
  return { order, parent, edge, sign, island };
}
