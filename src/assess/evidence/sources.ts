import type { Excitation } from '../../engine/drive.ts';
import { alterationOf } from './alterations.ts';
import type { Dictionary } from './dictionary.ts';
import { type SuspectBlock, suspectAt } from './suspects.ts';
import { BarPair, NOTHING, type Source, type Sources, type Supply } from './thevenin.ts';

/** Sources of all suspects behind two bars, with the armature turned back to the first pitch. */
export function solveSources(
  dictionary: Dictionary,
  bars: readonly [number, number],
  step: number,
  excitation: Excitation,
): Sources {
  const { suspects, design } = dictionary;
  const sources = newSources(suspects.count);
  const asked = new Asked(dictionary, bars, step, dictionary.supply(excitation, step));
  asked.sound(source);
  store(sources, 0);
  suspects.blocks.forEach((block, nth) => {
    for (let place = 0; place < design.bars; place++) {
      const ask = asked.site(block, nth, place);
      for (let severity = 0; severity < block.severities.length; severity++) {
        ask(severity, source);
        store(sources, suspectAt(block, place, severity));
      }
    }
  });
  return sources;
}

const source: Source = { v2: 0, r: 0, x: 0 };

function newSources(count: number): Sources {
  return { v2: new Float64Array(count), r: new Float64Array(count), x: new Float64Array(count) };
}

function store({ v2, r, x }: Sources, at: number): void {
  v2[at] = source.v2;
  r[at] = source.r;
  x[at] = source.x;
}

/** One pair of bars at one step, asked about one fault after another. */
class Asked {
  private readonly dictionary: Dictionary;
  private readonly bars: readonly [number, number];
  private readonly step: number;
  private readonly supply: Supply;
  private readonly pair: BarPair;

  constructor(dictionary: Dictionary, bars: readonly [number, number], step: number, supply: Supply) {
    this.dictionary = dictionary;
    this.bars = bars;
    this.step = step;
    this.supply = supply;
    this.pair = new BarPair(dictionary.at(step).jointed, bars[0], bars[1]);
  }

  sound(into: Source): void {
    this.pair.source(NOTHING, this.supply, into);
  }

  /** A way to ask for the source at any severity of one fault in one place. */
  site(block: SuspectBlock, nth: number, place: number): (severity: number, into: Source) => void {
    const { dictionary, pair, supply } = this;
    const { design, winding } = dictionary;
    const divided = dictionary.at(this.step).divided[nth]![place];
    if (divided !== undefined) {
      const [a, b] = this.bars;
      const port = new BarPair(divided, a, b).onePort(dictionary.dividedAt(nth, place).port);
      return (severity, into) => port.source(block.severities[severity]!.ohm as number, supply, into);
    }
    const as = (severity: number) => alterationOf(design, winding, block, place, severity);
    const { ports, inFront } = as(0);
    if (ports.length !== 1 || inFront.length > 0)
      return (severity, into) => pair.source(as(severity), supply, into);
    const port = pair.onePort(ports[0]!);
    return (severity, into) => port.source(as(severity).inverse[0]!, supply, into);
  }
}
