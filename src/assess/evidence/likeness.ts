import type { Standing } from './dictionary.ts';
import { nominalDrops } from './dropScale.ts';
import type { EvidenceModel } from './model.ts';
import { type NeedleNominal, nominalNeedles } from './needles.ts';
import { GAIN_MOST } from './noise.ts';
import { dropPass, meterPasses, stripPasses } from './standardTests.ts';
import { PULLS } from './strip.ts';
import { type SuspectBlock, suspectAt } from './suspects.ts';

/**
 * Which suspects the tests a job allows can show at all, and which they cannot tell from one another: found by doing
 * every allowed test in full, in thought, on every suspect.
 */
export interface Likeness {
  /** 1 where the suspect can be told from a part without fault. Length suspects. */
  readonly showable: Uint8Array;
  /** Other suspects elsewhere or of another kind that all allowed tests together can hardly tell from this one. */
  alike(suspect: number): readonly number[];
  /** Pairs of neighbouring bars, by the first, at which it shows as much as anywhere: a learner may mark any of them. */
  shownAt(suspect: number): readonly number[];
}

/** Logarithm of the odds all allowed tests together are expected to give: below the first unseen, below the second alike. */
const SHOWN = Math.log(20);
const ALIKE = 2;
/** No single reading counts for more: it might be a slip. */
const READING_MOST = 4;
/** Most by which all drops may be off alike, either way, share. */
const DROP_GAIN_MOST = 0.06;

const known = new WeakMap<EvidenceModel, Likeness>();

/** Worked out once for a model. */
export function likenessOf(model: EvidenceModel): Likeness {
  const found = known.get(model);
  if (found !== undefined) return found;
  const fresh = findLikeness(model);
  known.set(model, fresh);
  return fresh;
}

/** Figures that one instrument's error changes alike. */
interface Gauge {
  readonly from: number;
  readonly to: number;
  /** Most by which the error changes them, share of the figure. */
  readonly gainMost: number;
  /** First bars of the pairs of neighbours they are read at, where they are. */
  readonly pairs: readonly number[];
}

/**
 * What a suspect would show: needle by needle and drop by drop with its spread, and chance of a pull by place of the
 * strip.
 */
interface Signatures {
  readonly gauges: readonly Gauge[];
  readonly needles: number;
  readonly needle: Float32Array;
  readonly spread: Float32Array;
  readonly places: number;
  readonly felt: Float32Array;
}

function findLikeness(model: EvidenceModel): Likeness {
  const { suspects, design } = model;
  const signatures = signaturesOf(model);
  const showable = new Uint8Array(suspects.count);
  for (let k = 1; k < suspects.count; k++) showable[k] = apart(signatures, 0, k, k, 0) >= SHOWN ? 1 : 0;
  const sites = new Map<number, readonly (readonly number[])[]>();
  // Slots are alike unless a dummy coil lies in one: what holds at the first slot's places holds at all.
  const period = design.dummyPlace === undefined ? design.coilsPerSlot : design.bars;
  return {
    showable,
    shownAt: (suspect) => (showable[suspect] === 0 ? [] : shownPairs(signatures, suspect)),
    alike(suspect) {
      if (showable[suspect] === 0) return [];
      const { block, place, severity } = placeIn(model, suspect);
      const by = place - (place % period);
      const first = suspectAt(block, place - by, 0);
      let site = sites.get(first);
      if (site === undefined) {
        site = siteAlike(model, signatures, showable, block, first);
        sites.set(first, site);
      }
      return site[severity]!.map((other) => shifted(model, other, by));
    },
  };
}

/** Pairs that stand out nearly as far as the furthest cannot be told from it. */
const NEARLY_FURTHEST = 0.8;
/** What differs by less is not seen to stand out, share. */
const STANDS_OUT = 0.01;

function shownPairs({ needle, needles, gauges }: Signatures, suspect: number): number[] {
  const shown = gauges.flatMap(({ from, pairs }) => {
    const off = pairs.map((_, n) => {
      const sound = needle[from + n]!;
      return sound > 0 ? Math.abs(needle[suspect * needles + from + n]! / sound - 1) : 0;
    });
    const most = Math.max(...off);
    return most < STANDS_OUT ? [] : pairs.filter((_, n) => off[n]! >= NEARLY_FURTHEST * most);
  });
  return [...new Set(shown)];
}

/** A share of a site's severities that come near another site, from which on they all count as near. */
const MOSTLY = 1 / 3;

/** Lists of what cannot be told from each severity of one site. */
function siteAlike(
  model: EvidenceModel,
  signatures: Signatures,
  showable: Uint8Array,
  block: SuspectBlock,
  first: number,
): readonly (readonly number[])[] {
  const shown = block.severities.flatMap((_, k) => (showable[first + k] === 1 ? [k] : []));
  const lists = block.severities.map((_, k) =>
    shown.includes(k) ? findAlike(model, signatures, showable, first + k) : [],
  );
  const siteOf = (other: number) => {
    const { block: theirs, place } = placeIn(model, other);
    return suspectAt(theirs, place, 0);
  };
  const near = new Map<number, number[]>();
  for (const list of lists)
    for (const other of list) near.set(siteOf(other), [...(near.get(siteOf(other)) ?? []), other]);
  const mostly = [...near].filter(([, others]) => others.length >= MOSTLY * shown.length);
  return lists.map((list, k) => {
    if (!shown.includes(k)) return [];
    const sites = new Set(list.map(siteOf));
    return [...list, ...mostly.flatMap(([site, others]) => (sites.has(site) ? [] : [others[0]!]))];
  });
}

function findAlike(
  { suspects, design }: EvidenceModel,
  signatures: Signatures,
  showable: Uint8Array,
  suspect: number,
): number[] {
  const own = placeIn({ suspects }, suspect);
  const found: number[] = [];
  for (const block of suspects.blocks) {
    for (let place = 0; place < design.bars; place++) {
      if (block === own.block && place === own.place) continue;
      const nearest = nearestSeverity(signatures, suspect, block, suspectAt(block, place, 0));
      if (nearest !== null && showable[nearest] === 1) found.push(nearest);
    }
  }
  return found;
}

/** The severity of a site that comes within reach of a suspect, or null. */
function nearestSeverity(
  s: Signatures,
  suspect: number,
  { severities }: SuspectBlock,
  first: number,
): number | null {
  for (let k = 0; k < severities.length; k++) {
    const last = k + 1 >= severities.length || severities[k + 1]!.ohm === 'open';
    const next = last ? first + k : first + k + 1;
    if (farApart(s, suspect, first + k, next)) continue;
    if (apart(s, suspect, first + k, first + k, 0) < ALIKE) return first + k;
    const share = last ? 0 : along(s, suspect, first + k, next);
    if (share > 0 && share < 1 && apart(s, suspect, first + k, next, share) < ALIKE)
      return share < 0.5 ? first + k : next;
  }
  return null;
}

/** Whether no point between two others can be alike a suspect, even if the instrument's error favours it everywhere. */
function farApart(s: Signatures, suspect: number, from: number, to: number): boolean {
  const { needle, spread, needles } = s;
  let least = 0;
  for (const gauge of s.gauges) {
    for (let n = gauge.from; n < gauge.to && least < ALIKE; n++) {
      const at = needle[suspect * needles + n]!;
      const one = needle[from * needles + n]!;
      const other = needle[to * needles + n]!;
      const off = Math.max(Math.min(one, other) - at, at - Math.max(one, other)) - 2 * gauge.gainMost * at;
      if (off > 0) least += Math.min(READING_MOST, (off * off) / (2 * spread[suspect * needles + n]! ** 2));
    }
  }
  return least >= ALIKE;
}

/** How far along the straight line between two severities a suspect's needles come nearest. */
function along(s: Signatures, suspect: number, from: number, to: number): number {
  let dot = 0;
  let length = 0;
  for (let n = 0; n < s.needles; n++) {
    const variance = s.spread[suspect * s.needles + n]! ** 2;
    const start = s.needle[from * s.needles + n]!;
    const step = s.needle[to * s.needles + n]! - start;
    dot += (step * (s.needle[suspect * s.needles + n]! - start)) / variance;
    length += (step * step) / variance;
  }
  return length > 0 ? dot / length : 0;
}

/** Expected logarithm of the odds between a suspect and a point between two others; needles first, they tell most. */
function apart(s: Signatures, one: number, from: number, to: number, share: number): number {
  let needles = 0;
  for (const gauge of s.gauges) {
    needles += needlesApart(s, gauge, one, from, to, share);
    if (needles >= SHOWN) return needles;
  }
  let strip = 0;
  const nearer = share < 0.5 ? from : to;
  for (let p = 0; p < s.places && strip < SHOWN; p++)
    strip += feltApart(s.felt[one * s.places + p]!, s.felt[nearer * s.places + p]!);
  return needles + strip;
}

/** Half the squared distance in spreads, after the instrument's common error has taken what it can. */
function needlesApart(
  s: Signatures,
  { from: first, to: end, gainMost }: Gauge,
  one: number,
  from: number,
  to: number,
  share: number,
): number {
  const gainSd = gainMost / Math.sqrt(3);
  let pull = 0;
  let hold = 1 / (gainSd * gainSd);
  for (let n = first; n < end; n++) {
    const a = one * s.needles + n;
    const needle = s.needle[a]!;
    const variance = s.spread[a]! ** 2;
    pull += ((between(s, n, from, to, share) - needle) * needle) / variance;
    hold += (needle * needle) / variance;
  }
  const gain = Math.max(-gainMost, Math.min(gainMost, pull / hold));
  let half = (gain * gain) / (2 * gainSd * gainSd);
  for (let n = first; n < end; n++) {
    const a = one * s.needles + n;
    const off = between(s, n, from, to, share) - s.needle[a]! * (1 + gain);
    half += Math.min(READING_MOST, (off * off) / (2 * s.spread[a]! ** 2));
  }
  return half;
}

function between(s: Signatures, n: number, from: number, to: number, share: number): number {
  const start = s.needle[from * s.needles + n]!;
  return share === 0 ? start : start + share * (s.needle[to * s.needles + n]! - start);
}

const EITHER = 0.02;
function feltApart(p: number, q: number): number {
  const a = EITHER + (1 - 2 * EITHER) * p;
  const b = EITHER + (1 - 2 * EITHER) * q;
  return a * Math.log(a / b) + (1 - a) * Math.log((1 - a) / (1 - b));
}

function signaturesOf(model: EvidenceModel): Signatures {
  const { dictionary, suspects } = model;
  const passes = meterPasses(model);
  const readings = passes.flatMap((pass) => pass.readings);
  const neighbour = passes.flatMap(({ test, readings: own }) => (test === 'neighbour' ? own : []));
  const drops = dropPass(model);
  const held = stripPasses(model).flatMap((pass) => pass.readings);
  const needles = readings.length + drops.length;
  const needle = new Float32Array(suspects.count * needles);
  const spread = new Float32Array(suspects.count * needles);
  const fill = (n: number, standing: Standing, nominal: NeedleNominal) =>
    dictionary.turnedBackSuspects(standing).forEach((from, k) => {
      needle[k * needles + n] = nominal.needle[from]!;
      spread[k * needles + n] = nominal.spread[from]!;
    });
  readings.forEach((laid, n) => {
    const standing = dictionary.standing(laid.rotationDeg);
    fill(n, standing, nominalNeedles(dictionary.needles(laid, standing)));
  });
  drops.forEach((laid, n) => {
    const { table, standing } = model.drops.turnedBack(laid);
    fill(readings.length + n, standing, nominalDrops(table));
  });
  const felt = new Float32Array(suspects.count * held.length);
  held.forEach((place, p) => {
    const standing = dictionary.standing(place.rotationDeg);
    const table = dictionary.pulls(place, standing);
    dictionary.turnedBackSuspects(standing).forEach((from, k) => {
      felt[k * held.length + p] = 1 - table[from * PULLS]!;
    });
  });
  const firsts = (laid: readonly { readonly bars: readonly [number, number] }[]) =>
    laid.map(({ bars }) => bars[0]);
  const gauges = [
    { from: 0, to: readings.length, gainMost: GAIN_MOST, pairs: firsts(neighbour) },
    { from: readings.length, to: needles, gainMost: DROP_GAIN_MOST, pairs: firsts(drops) },
  ].filter(({ from, to }) => to > from);
  return { gauges, needles, needle, spread, places: held.length, felt };
}

function placeIn(
  { suspects }: Pick<EvidenceModel, 'suspects'>,
  suspect: number,
): { block: SuspectBlock; place: number; severity: number } {
  const block = suspects.blocks.findLast(({ first }) => first <= suspect)!;
  const within = suspect - block.first;
  const per = block.severities.length;
  return { block, place: Math.floor(within / per), severity: within % per };
}

function shifted({ suspects, design }: EvidenceModel, suspect: number, by: number): number {
  const { block, place, severity } = placeIn({ suspects }, suspect);
  return suspectAt(block, (((place + by) % design.bars) + design.bars) % design.bars, severity);
}
