import type { Finding, FoundPlace } from '../../bench/paper.ts';
import { median } from '../../engine/math/median.ts';
import type { Job } from '../../scenario/public/job.ts';
import type { Amps, Notes } from './notes.ts';

/**
 * How someone who knows the trade reads a set of notes. A fallen reading is a finding, not a name: the strip tells a
 * bridge or a short from an open coil or a bad joint, and two fallen pairs side by side point to the bar between them.
 */

/** Trade practice: readings of a healthy armature lie within 5 % of one another (references A11). */
export const STANDS_OUT = 0.05;
/** A pair is as good as dead below this share of the others. */
const DEAD = 0.8;
/** Share of the bars that must look dirty before scattered readings are put down to dirt. */
const DIRTY_SHARE = 0.5;

/** Bars either way that a reading of a forced winding is held against. */
const BESIDE = 3;

/**
 * Readings a bar's own is held against: those of bars with the same place in their slot, since slot mates alternate;
 * on a forced winding, which has more places than bars and whose readings wander, only those close by.
 */
function comparable(amps: readonly Amps[], bar: number, { armature }: Job): number[] {
  const { bars, slots, coilsPerSlot } = armature;
  const forced = slots * coilsPerSlot !== bars;
  const near = (other: number) =>
    Math.min((other - bar + bars) % bars, (bar - other + bars) % bars) <= BESIDE;
  const alike = (other: number) => other % coilsPerSlot === bar % coilsPerSlot;
  return amps.filter((one) => (forced ? near(one.bar) : alike(one.bar))).map(({ readingA }) => readingA);
}

/** Deviation of each bar's reading from the middle of those it can be compared with, by bar. */
export function deviations(amps: readonly Amps[], job: Job): number[] {
  const byBar = new Map(amps.map(({ bar, readingA }) => [bar, readingA]));
  return Array.from({ length: job.armature.bars }, (_, bar) => {
    const middle = median(comparable(amps, bar, job));
    const reading = byBar.get(bar);
    return reading === undefined || middle === 0 ? 0 : reading / middle - 1;
  });
}

/** Bars with a fallen pair on either side: the joint at that bar. */
function joints(fall: readonly number[], depth: number): number[] {
  const bars = fall.length;
  return fall.flatMap((d, bar) => (d < -depth && fall[(bar - 1 + bars) % bars]! < -depth ? [bar] : []));
}

function lowest(fall: readonly number[], but: readonly number[]): number | null {
  const left = fall
    .map((d, bar) => ({ d, bar }))
    .filter(({ d, bar }) => d < -STANDS_OUT && !but.includes(bar));
  if (left.length === 0) return null;
  return left.reduce((least, one) => (one.d < least.d ? one : least)).bar;
}

/** A coil the wrong way round stands low between raised neighbours; the others it lowers lie side by side. */
function lowBetweenRaised(fall: readonly number[], spoken: readonly number[]): number | null {
  const bars = fall.length;
  const step = (bar: number) => (fall[(bar + 1) % bars]! + fall[(bar - 1 + bars) % bars]!) / 2 - fall[bar]!;
  const low = fall.flatMap((d, bar) => (d < -STANDS_OUT && !spoken.includes(bar) ? [bar] : []));
  return low.reduce<number | null>(
    (best, bar) => (best === null || step(bar) > step(best) ? bar : best),
    null,
  );
}

/** Two or three slots a loop: a strip that pulls at many more has found a loop of many coils. */
const MANY_SLOTS = 1 / 4;

/** Two coils joined in a slot close a loop of a whole coil span, which no pair of bars can be blamed for. */
function looksCoilToCoil({ notes, job }: Reader): boolean {
  const slots = new Set(notes.strip.filter(({ pull }) => pull > 0).map(({ slot }) => slot));
  return slots.size > MANY_SLOTS * job.armature.slots;
}

/** A coil joined the wrong way round lowers several readings alike; a bridge or a short lowers one above all. */
function looksReversed(fall: readonly number[]): boolean {
  const sorted = [...fall].sort((a, b) => a - b);
  return sorted[2]! < -STANDS_OUT && sorted[2]! < 0.6 * sorted[0]!;
}

/** A strip that pulls at every slot in one place has found the equalisers: from then on the readings decide. */
function pullsAllRound(notes: Notes, job: Job): boolean {
  if (job.armature.equalised !== true) return false;
  const places = [...new Set(notes.strip.map(({ angleDeg }) => angleDeg))];
  return places.some((at) =>
    notes.strip.filter((felt) => felt.angleDeg === at).every(({ pull }) => pull > 0),
  );
}

/**
 * Equalisers tie a bar to the one a pole pair further round: beside an open coil the tied pair carries for both and
 * rises; beside a bridge it falls too.
 */
function tiedPairRises(fall: readonly number[], pair: number, { armature }: Job): boolean {
  const apart = armature.bars / (armature.poles / 2);
  return fall[(pair + apart) % armature.bars]! > 0.2;
}

interface Reader {
  readonly fall: readonly number[];
  readonly pulls: boolean;
  readonly job: Job;
  readonly notes: Notes;
  pair(bar: number): FoundPlace;
  bar(bar: number): FoundPlace;
}

/** What the strip's pull means, with the joints already spoken for left out. */
function whyItPulls(reader: Reader, spoken: readonly number[]): Finding[] {
  const { fall, pair } = reader;
  const at = lowest(fall, spoken);
  if (looksCoilToCoil(reader)) return [{ condition: 'shortedCoil', place: { kind: 'somewhere' } }];
  const left = fall.map((d, bar) => (spoken.includes(bar) ? 0 : d));
  const turned = lowBetweenRaised(fall, spoken);
  if (turned !== null && looksReversed(left)) return [{ condition: 'reversed', place: pair(turned) }];
  return [{ condition: bridgeOrShort(reader), place: at === null ? { kind: 'somewhere' } : pair(at) }];
}

/** What still pulls when the grooves between the bars have been sawn out lies in the winding. */
function bridgeOrShort({ notes }: Reader): 'bridgedBars' | 'shortedCoil' {
  return notes.done.some(({ remedy }) => remedy === 'undercut') ? 'shortedCoil' : 'bridgedBars';
}

/** A fallen pair that nothing else explains: the coil is open, or one of its ends is off its riser. */
function whyItFalls(reader: Reader, spoken: readonly number[]): Finding[] {
  const at = lowest(reader.fall, spoken);
  if (at === null) return [];
  const thrown = reader.notes.looks.filter(({ sees }) => sees.includes('solderThrown'));
  const risers = thrown.map(({ place }) => Number(place.split(':')[1]));
  const condition = coilsAt(at, reader).some((bar) => risers.includes(bar)) ? 'badRiserJoint' : 'openCoil';
  return [{ condition, place: reader.pair(at) }];
}

/** Bars where the coils of a fallen pair start; on a wave winding the pair is made of as many coils as pole pairs. */
function coilsAt(pair: number, { fall, job }: Reader): number[] {
  const { bars, winding } = job.armature;
  if (winding === 'lap') return [pair, (pair + 1) % bars];
  const others = fall.flatMap((d, bar) => (d < -STANDS_OUT && bar !== pair ? [bar] : []));
  return [pair, ...others].flatMap((bar) => [bar, (bar + 1) % bars]);
}

/**
 * A coil that ends at a dead bar lies in other pairs too: on a wave winding one pole pair further round, give or take
 * a bar. Such a pair is spoken for.
 */
function besideJoint(fall: readonly number[], bar: number, { armature }: Job): number[] {
  const { bars, poles, winding } = armature;
  if (winding === 'lap' || fall[bar]! > -DEAD) return [];
  const apart = bars / (poles / 2);
  return fall.flatMap((_, pair) => {
    const steps = (pair + 0.5 - bar + bars) % bars;
    const off = Math.abs(steps - Math.round(steps / apart) * apart);
    return off <= 1.5 && Math.round(steps / apart) % (poles / 2) !== 0 ? [pair] : [];
  });
}

/** Of an equalised winding, where the strip tells nothing. */
function equalisedFindings(reader: Reader): Finding[] {
  const { fall, bar, pair, job } = reader;
  const bad = joints(fall, DEAD);
  if (bad.length > 0) return bad.map((one) => ({ condition: 'badRiserJoint', place: bar(one) }));
  const at = lowest(fall, []);
  if (at === null) return [];
  if (tiedPairRises(fall, at, job)) return whyItFalls(reader, []);
  const [joint] = joints(fall, STANDS_OUT);
  if (joint !== undefined) return [{ condition: 'badRiserJoint', place: bar(joint) }];
  return [{ condition: bridgeOrShort(reader), place: pair(at) }];
}

function windingFindings(reader: Reader): Finding[] {
  if (pullsAllRound(reader.notes, reader.job)) return equalisedFindings(reader);
  const { fall, pulls, bar, job } = reader;
  const bad = joints(fall, pulls ? DEAD : STANDS_OUT);
  const spoken = bad.flatMap((one) => [
    one,
    (one - 1 + fall.length) % fall.length,
    ...besideJoint(fall, one, job),
  ]);
  const found: Finding[] = bad.map((one) => ({ condition: 'badRiserJoint', place: bar(one) }));
  return [...found, ...(pulls ? whyItPulls(reader, spoken) : whyItFalls(reader, spoken))];
}

/** Most bars look dirty: scattered readings are put down to that. */
export function isDirty(notes: Notes, job: Job): boolean {
  const dirty = notes.looks.filter(({ place, sees }) => place.startsWith('bar:') && sees.includes('dirt'));
  return dirty.length > DIRTY_SHARE * job.armature.bars;
}

/** The drop between bars shows what ammeter and strip cannot: a soft bridge lowers it, a joint raises it. */
function dropFindings(reader: Reader): Finding[] {
  const { notes, pair, bar } = reader;
  const read = notes.drops.flatMap(({ at, millivolts }) =>
    typeof at === 'number' ? [{ at, millivolts }] : [],
  );
  if (read.length === 0) return [];
  const middle = median(read.map(({ millivolts }) => millivolts ?? Number.POSITIVE_INFINITY));
  const off = (at: number) => {
    const drop = read.find((one) => one.at === at)?.millivolts;
    return drop == null ? 1 : drop / middle - 1;
  };
  const bars = read.length;
  const high = read.filter(({ at }) => off(at) > STANDS_OUT).map(({ at }) => at);
  const joint = high.find((at) => high.includes((at - 1 + bars) % bars));
  if (joint !== undefined) return [{ condition: 'badRiserJoint', place: bar(joint) }];
  const lowestAt = read.reduce((least, one) => (off(one.at) < off(least) ? one.at : least), read[0]!.at);
  if (off(lowestAt) < -STANDS_OUT) return [{ condition: bridgeOrShort(reader), place: pair(lowestAt) }];
  return high.slice(0, 1).map((at) => ({ condition: 'badRiserJoint', place: pair(at) }));
}

function insulationFindings({ lit, megohms }: Notes, { limits }: Job): Finding[] {
  if ((lit?.length ?? 0) > 0) return [{ condition: 'grounded', place: { kind: 'somewhere' } }];
  const low = megohms.some(
    (one) => one.part === 'armature' && one.megohms !== 'over' && one.megohms < limits.insulationMohm,
  );
  return low ? [{ condition: 'poorInsulation', place: { kind: 'somewhere' } }] : [];
}

/** Everything the notes say of the armature, whatever is done about it. */
export function armatureFindings(notes: Notes, job: Job, chalked: number): Finding[] {
  const { bars } = job.armature;
  const count = (bar: number) => (bar - chalked + bars) % bars;
  const reader: Reader = {
    fall: deviations(notes.neighbour, job),
    pulls: notes.strip.some(({ pull }) => pull > 0),
    job,
    notes,
    pair: (bar) => ({ kind: 'pair', count: count(bar) }),
    bar: (bar) => ({ kind: 'bar', count: count(bar) }),
  };
  const winding: Finding[] = isDirty(notes, job)
    ? [{ condition: 'bridgedBars', place: { kind: 'somewhere' } }]
    : windingFindings(reader);
  const soft = winding.length > 0 ? [] : dropFindings(reader);
  return [...insulationFindings(notes, job), ...winding, ...soft];
}
