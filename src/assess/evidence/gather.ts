import type { BenchCare } from '../../bench/action.ts';
import { barAt, type CommutatorGeometry } from '../../bench/geometry.ts';
import type { SheetLine } from '../../bench/paper.ts';
import { scaleCurrent, scaleFraction } from '../../engine/instruments/ammeter.ts';
import { UPPER_STOP } from '../../engine/instruments/needle.ts';
import { isArmatureRemedy } from '../../engine/parts/remedies.ts';
import { barZeroDeg } from '../../engine/parts/winding.ts';
import { acts, type Film } from '../film.ts';
import { firstBar, spacingOf } from '../passes.ts';
import { type Contacts, contactsOf } from './contacts.ts';
import { lampQuestion } from './insulation.ts';
import type {
  DropReading,
  LampReading,
  MegohmReading,
  MeterReading,
  Reading,
  Source,
  StripPassReading,
  StripReading,
} from './reading.ts';

/** A line of the sheet beside what the instruments had shown. */
export interface WrittenReading {
  readonly entry: number;
  readonly line: SheetLine;
  /** What the learner wrote, as readings to weigh; none where nothing was measured that it could be about. */
  readonly weighed: readonly Reading[];
  /** Entries of the contacts it is about. */
  readonly about: readonly number[];
  /** How far a current written lies from the needle, as a share of the range; null for other lines. */
  readonly off: number | null;
  /** Whether lamp or strip showed something else than was written. */
  readonly differs: boolean;
}

/** Everything an attempt learnt about the armature as it came to the bench. */
export interface Gathered {
  readonly contacts: Contacts;
  readonly written: readonly WrittenReading[];
}

/** Entries between which no remedy changes the armature: after `from` and before `before`. */
export interface Spell {
  readonly from: number;
  readonly before: number;
}

/** The armature as it came to the bench, and as it lies after the last remedy done on it, if any was: another part. */
export function spellsOf(film: Film): readonly [Spell] | readonly [Spell, Spell] {
  const done = acts(film, 'remedy.do').filter(({ action: { remedy } }) => isArmatureRemedy(remedy));
  const [first, last] = [done[0], done.at(-1)];
  if (first === undefined || last === undefined) return [{ from: -1, before: Infinity }];
  return [
    { from: -1, before: first.n },
    { from: last.n, before: Infinity },
  ];
}

/** Gathers the readings of one spell of an attempt. Of lines about one contact the last stands. */
export function gatherReadings(film: Film, { from, before }: Spell = spellsOf(film)[0]): Gathered {
  const stretches = film.stretches.filter(({ since }) => since >= from && since < before);
  const found = contactsOf({ stretches, design: film.design });
  const trusted = meterTrustedFrom(film);
  const contacts = { ...found, meter: found.meter.filter(({ entry }) => entry > trusted) };
  const geometry = { bars: film.design.bars, barZeroDeg: barZeroDeg(film.design) };
  const chalkAt = (entry: number) => stretches.find(({ since }) => since === entry)?.seen.chalkedBar ?? null;
  const written = acts(film, 'sheet.write')
    .filter(({ n, action }) => n > from && n < before && (action.line.part ?? 'armature') === 'armature')
    .map(({ n, action }) => readLine(action.line, n, contacts, geometry, chalkAt(n)));
  return { contacts, written };
}

/** Readings to weigh: what the instruments showed, or what was written of it; what the lens showed in either case. */
export function readingsFrom({ contacts, written }: Gathered, from: Source): readonly Reading[] {
  const { meter, lamp, strip, tester, drop, looks } = contacts;
  if (from === 'instrument') return inOrder([...meter, ...lamp, ...strip, ...tester, ...drop, ...looks]);
  const standing = written.filter(
    ({ about }, nth) => !written.slice(nth + 1).some((later) => sameContacts(about, later.about)),
  );
  return inOrder([...standing.flatMap(({ weighed }) => weighed), ...looks]);
}

function inOrder(readings: readonly Reading[]): Reading[] {
  return [...readings].sort((a, b) => a.entry - b.entry);
}

function sameContacts(one: readonly number[], other: readonly number[]): boolean {
  return one.length > 0 && one.length === other.length && one.every((entry, i) => entry === other[i]);
}

/** Entry at which the ammeter or its leads were last set right: what it showed before was the bench's doing. */
function meterTrustedFrom(film: Film): number {
  const cared = acts(film, 'bench.setRight').filter(({ action: { what } }) => METER_CARE.includes(what));
  return cared.at(-1)?.n ?? -1;
}
const METER_CARE: readonly BenchCare[] = ['ammeterZero', 'ammeterLeads'];

const NOTHING = { weighed: [], about: [], off: null, differs: false };

function readLine(
  line: SheetLine,
  entry: number,
  contacts: Contacts,
  geometry: CommutatorGeometry,
  chalkedBar: number | null,
): WrittenReading {
  const before = <T extends Reading>(readings: readonly T[]) =>
    readings.filter((reading) => reading.entry < entry);
  const bar = line.count === null || chalkedBar === null ? null : (chalkedBar + line.count) % geometry.bars;
  const found = { entry, line };
  switch (line.test) {
    case 'neighbour':
    case 'spaced':
      return { ...found, ...meterLine(line, entry, before(contacts.meter), bar, geometry.bars) };
    case 'ground':
      return { ...found, ...lampLine(line, entry, before(contacts.lamp), bar) };
    case 'strip':
      return { ...found, ...stripLine(line, entry, before(contacts.strip), bar, geometry) };
    case 'megohm':
      return { ...found, ...testerLine(line, entry, before(contacts.tester)) };
    case 'millivolt':
      return { ...found, ...dropLine(line, entry, before(contacts.drop), bar, geometry.bars) };
    default:
      return { ...found, ...NOTHING };
  }
}

type LineReading = Omit<WrittenReading, 'entry' | 'line'>;

/** A current written of the last contact it can be about: the bar counted to, so many bars apart. */
function meterLine(
  line: SheetLine,
  entry: number,
  readings: readonly MeterReading[],
  bar: number | null,
  bars: number,
): LineReading {
  const fits = (reading: MeterReading) =>
    (spacingOf(reading, bars) === 1) === (line.test === 'neighbour') &&
    (line.count === null || firstBar(reading, bars) === bar || reading.bars[0] === bar);
  const read = readings.findLast(fits);
  if (read === undefined || line.readingA === undefined) return NOTHING;
  const rangeA = line.rangeA ?? read.rangeA;
  const target = scaleFraction(Math.max(0, line.readingA), rangeA);
  const deflection = Math.min(UPPER_STOP, target);
  const shown = { ...read, entry, rangeA, deflection, pegged: target > UPPER_STOP, from: 'sheet' as const };
  const off = Math.abs(line.readingA - scaleCurrent(read.deflection, read.rangeA)) / rangeA;
  return { weighed: [shown], about: [read.entry], off, differs: false };
}

/** A lamp result written of one bar, or of all bars tried so far. */
function lampLine(
  line: SheetLine,
  entry: number,
  readings: readonly LampReading[],
  bar: number | null,
): LineReading {
  const { lamp } = line;
  if (lamp === undefined) return NOTHING;
  const ground = readings.filter(({ places }) => {
    const question = lampQuestion(places);
    return question.asks === 'ground' && (line.count === null || question.bar === bar);
  });
  const as = (reading: LampReading): LampReading => ({ ...reading, entry, shows: lamp, from: 'sheet' });
  // "Dark" is said of every bar that was tried, "lit" of one of them at least.
  const lit = ground.filter(({ shows }) => shows !== 'dark');
  const said = lamp === 'dark' ? ground : [lit.at(-1) ?? ground.at(-1)].filter((one) => one !== undefined);
  const differs = ground.length > 0 && lit.length > 0 !== (lamp !== 'dark');
  return { weighed: said.map(as), about: ground.map((one) => one.entry), off: null, differs };
}

/** What was felt, written of one bar in line with the strip, or of the whole pass so far. */
function stripLine(
  line: SheetLine,
  entry: number,
  readings: readonly StripReading[],
  bar: number | null,
  geometry: CommutatorGeometry,
): LineReading {
  const { strip } = line;
  if (strip === undefined) return NOTHING;
  const felt = strip !== 'still';
  const about = readings.filter(
    ({ angleDeg, rotationDeg }) => line.count === null || barAt(geometry, angleDeg, rotationDeg) === bar,
  );
  if (about.length === 0) return NOTHING;
  const pass: StripPassReading = { kind: 'stripPass', entry, places: about, felt, from: 'sheet' };
  const differs = about.some(({ pull }) => pull !== 0) !== felt;
  return { weighed: [pass], about: about.map((one) => one.entry), off: null, differs };
}

/** A figure of the insulation tester written of its last reading, at the voltage written or the one it was read at. */
function testerLine(
  { megohms, testVolt }: SheetLine,
  entry: number,
  readings: readonly MegohmReading[],
): LineReading {
  const read = readings.findLast(({ volt }) => testVolt === undefined || volt === testVolt);
  if (read === undefined || megohms === undefined) return NOTHING;
  const shown: MegohmReading = { ...read, entry, megohms, from: 'sheet' };
  return { weighed: [shown], about: [read.entry], off: null, differs: isOther(megohms, read.megohms) };
}

/** A figure written further than this from what was shown is another figure, share. */
const OTHER = 0.05;

function isOther(one: number | 'over', two: number | 'over'): boolean {
  if (one === 'over' || two === 'over') return one !== two;
  return Math.abs(one - two) > OTHER * Math.max(one, two);
}

/** A drop written of the last one it can be about: the bar counted to and the next. */
function dropLine(
  { count, millivolts }: SheetLine,
  entry: number,
  readings: readonly DropReading[],
  bar: number | null,
  bars: number,
): LineReading {
  const fits = (reading: DropReading) =>
    count === null || (bar !== null && (firstBar(reading, bars) === bar || reading.bars[0] === bar));
  const read = readings.findLast(fits);
  if (read === undefined || millivolts === undefined) return NOTHING;
  const shown: DropReading = { ...read, entry, millivolts: Math.abs(millivolts), from: 'sheet' };
  return { weighed: [shown], about: [read.entry], off: null, differs: isOther(millivolts, read.millivolts) };
}
