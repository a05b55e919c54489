import { SLACK_OF_PASS, SLACK_OF_PULL, type Slack } from './beyond.ts';
import type { Dictionary } from './dictionary.ts';
import type { StripPassReading, StripReading } from './reading.ts';
import { joinedPulls, PULLS, passLikelihoods, STRIP_SLIP, stripLikelihoods } from './strip.ts';

/** What is known of the strip of one suspect: strictly, and where some readings may have nothing to do with it. */
export interface Felt {
  readonly log: number;
  readonly loose: number;
}

type Placed = StripReading | StripPassReading;

/** One reading of the strip, of each suspect how much better it explains it than a sound part does. */
interface FeltReading {
  readonly reading: Placed;
  readonly slack: Slack;
  readonly better: Float64Array;
  readonly looseBetter: Float64Array;
  readonly sound: number;
}

/** How something besides the listed suspects stands to each reading of the strip, against a sound part. */
export interface Against {
  readonly better: ArrayLike<number>;
  readonly looseBetter: ArrayLike<number>;
}

/** Weighs readings of the strip for every suspect, as logarithms. */
export class StripScale {
  readonly log: Float64Array;
  readonly loose: Float64Array;
  private readonly dictionary: Dictionary;
  private readonly readings: FeltReading[] = [];

  constructor(dictionary: Dictionary) {
    this.dictionary = dictionary;
    this.log = new Float64Array(dictionary.suspects.count);
    this.loose = new Float64Array(dictionary.suspects.count);
  }

  get count(): number {
    return this.readings.length;
  }

  add(reading: Placed): Float64Array {
    const pass = reading.kind === 'stripPass';
    const slack = pass ? SLACK_OF_PASS : SLACK_OF_PULL;
    const { scale, offset } = slack;
    const likelihoods = pass
      ? passLikelihoods(this.dictionary, reading)
      : stripLikelihoods(this.dictionary, reading);
    const strict = likelihoods.map(Math.log);
    const loose = likelihoods.map((likelihood) => Math.log(scale * likelihood + offset));
    for (let k = 0; k < strict.length; k++) {
      this.log[k]! += strict[k]!;
      this.loose[k]! += loose[k]!;
    }
    const [sound, looseSound] = [strict[0]!, loose[0]!];
    this.readings.push({
      reading,
      slack,
      sound: likelihoods[0]!,
      better: strict.map((log) => log - sound),
      looseBetter: loose.map((log) => log - looseSound),
    });
    return likelihoods;
  }

  private ofSuspect(suspect: number): Against {
    return {
      better: this.readings.map(({ better }) => better[suspect]!),
      looseBetter: this.readings.map(({ looseBetter }) => looseBetter[suspect]!),
    };
  }

  /** Two bars joined beside every reading from one on. */
  ofJoined(bars: readonly [number, number], ohm: number, from: number): { better: number; loose: number }[] {
    return this.readings.slice(from).map(({ reading, slack, sound }) => {
      const likelihood = joinedLikelihood(this.dictionary, reading, bars, ohm);
      const loosely = (one: number) => slack.scale * one + slack.offset;
      return { better: Math.log(likelihood / sound), loose: Math.log(loosely(likelihood) / loosely(sound)) };
    });
  }

  /** Several suspects at once beside every reading. */
  ofSeveral(suspects: readonly number[]): Against {
    const [first, ...others] = suspects.map((suspect) => this.ofSuspect(suspect));
    const strongest = (of: keyof Against) =>
      Array.from(first![of], (own, n) => others.reduce((most, one) => stronger(most, one[of][n]!), own));
    return { better: strongest('better'), looseBetter: strongest('looseBetter') };
  }

  /** The strip feels the stronger of two faults; they seldom lie under it together. */
  ofPair({ better, looseBetter }: Against, other: number): Felt {
    let [log, loose] = [this.log[0]!, this.loose[0]!];
    this.readings.forEach((reading, n) => {
      log += stronger(better[n]!, reading.better[other]!);
      loose += stronger(looseBetter[n]!, reading.looseBetter[other]!);
    });
    return { log, loose };
  }
}

function stronger(one: number, two: number): number {
  return Math.abs(one) >= Math.abs(two) ? one : two;
}

function joinedLikelihood(
  dictionary: Dictionary,
  reading: Placed,
  bars: readonly [number, number],
  ohm: number,
): number {
  const at = (held: Parameters<typeof joinedPulls>[1]) => joinedPulls(dictionary, held, bars, ohm);
  if (reading.kind === 'strip') return (1 - STRIP_SLIP) * at(reading)[reading.pull]! + STRIP_SLIP / PULLS;
  const still = reading.places.reduce((chance, place) => chance * at(place)[0]!, 1);
  return (1 - STRIP_SLIP) * (reading.felt ? 1 - still : still) + STRIP_SLIP / 2;
}
