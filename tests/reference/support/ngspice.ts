import { Simulation } from 'eecircuit-engine';

/** One complex number of an ac analysis. */
export interface Phasor {
  readonly re: number;
  readonly im: number;
}

/** Every node voltage `v(name)` and every current `i(name)` of one ac point, names in lower case. */
export type AcPoint = ReadonlyMap<string, Phasor>;

let started: Promise<Simulation> | undefined;

/** The general-purpose circuit solver ngspice, started once in this process and fed one netlist after another. */
function solver(): Promise<Simulation> {
  started ??= (async () => {
    const simulation = new Simulation();
    await simulation.start();
    return simulation;
  })();
  return started;
}

let queue: Promise<unknown> = Promise.resolve();

/** Runs the ac analysis of a netlist with a single frequency. One at a time: the solver has one circuit in hand. */
export function acPoint(netlist: string): Promise<AcPoint> {
  const result = queue.then(() => runAc(netlist));
  queue = result.catch(() => undefined);
  return result;
}

async function runAc(netlist: string): Promise<AcPoint> {
  const simulation = await solver();
  simulation.setNetList(netlist);
  const result = await simulation.runSim();
  const complaints = simulation.getError().filter((line) => !/^note/i.test(line));
  if (complaints.length > 0) throw new Error(`ngspice complains: ${complaints.join('; ')}`);
  if (result.dataType !== 'complex' || result.numPoints !== 1)
    throw new Error(
      `Expected one complex point from ngspice, but ${result.numPoints} ${result.dataType} came.`,
    );
  return new Map(
    result.data.map(({ name, values }) => {
      const { real, img } = values[0]!;
      return [name, { re: real, im: img }];
    }),
  );
}

export const sizeOf = ({ re, im }: Phasor): number => Math.hypot(re, im);
export const minus = (a: Phasor, b: Phasor): Phasor => ({ re: a.re - b.re, im: a.im - b.im });
