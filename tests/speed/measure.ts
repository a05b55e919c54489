/** One line of the speed table. Times are medians of one run. */
export interface SpeedRow {
  readonly id: string;
  readonly what: string;
  /** Processor time of this process, ms: other work on the machine does not count. */
  readonly ms: number;
  /** Time on the clock, ms. */
  readonly wallMs: number;
  /** How many samples the medians are of, and how many runs went into each. */
  readonly samples: number;
  readonly runsEach: number;
  /** Longest time wished for, ms; left out where none is. */
  readonly aimMs?: number;
}

export type Timing = Pick<SpeedRow, 'ms' | 'wallMs' | 'samples' | 'runsEach'>;

/** How much is measured: warming up and measuring for so long, at least so many samples of at least so long each. */
export interface Effort {
  readonly warmUpMs: number;
  readonly forMs: number;
  readonly samples: number;
  readonly sampleMs: number;
}
export const THOROUGH: Effort = { warmUpMs: 600, forMs: 2000, samples: 15, sampleMs: 8 };
/** Hardly at all: for checking that the measurement runs. */
export const ONCE: Effort = { warmUpMs: 0, forMs: 0, samples: 1, sampleMs: 0 };

const processorMs = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};

/** @param run gets the number of the run; may be asynchronous */
export async function timed(effort: Effort, run: (n: number) => unknown): Promise<Timing> {
  let n = 0;
  const several = async (count: number): Promise<Sample> => {
    const wall = performance.now();
    const processor = processorMs();
    for (let k = 0; k < count; k++) {
      const pending = run(n++);
      if (pending instanceof Promise) await pending;
    }
    return { ms: (processorMs() - processor) / count, wallMs: (performance.now() - wall) / count };
  };
  const runsEach = await warmUp(effort, several);
  const taken: Sample[] = [];
  const end = performance.now() + effort.forMs;
  while (taken.length < effort.samples || performance.now() < end) taken.push(await several(runsEach));
  const of = (key: keyof Sample) => median(taken.map((sample) => sample[key]));
  return { ms: of('ms'), wallMs: of('wallMs'), samples: taken.length, runsEach };
}

type Sample = Pick<Timing, 'ms' | 'wallMs'>;

/** Runs until warm and says how many runs make a sample long enough. */
async function warmUp(effort: Effort, several: (count: number) => Promise<Sample>): Promise<number> {
  let count = 1;
  let last = await several(1);
  const end = performance.now() + effort.warmUpMs;
  while (performance.now() < end) {
    last = await several(count);
    if (last.ms * count < effort.sampleMs) count *= 2;
  }
  return Math.max(1, Math.ceil(effort.sampleMs / Math.max(last.ms, 1e-6)));
}

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}
