import { alterationOf } from './alterations.ts';
import { type AlterableWinding, AlteredScale, type Run, type Standing } from './altered.ts';
import type { Dictionary } from './dictionary.ts';
import { dividedWinding, jointedWinding } from './joints.ts';
import type { Severity, WindingKind } from './priors.ts';
import { faultOf, nearestSuspect, type SuspectBlock, type SuspectPlace, type Suspects } from './suspects.ts';
import { type Alteration, NOTHING, together } from './thevenin.ts';

/**
 * Several winding faults at once: what already stands out, with one more fault of every place beside it. That one is
 * looked for on a coarser list of severities; each stands for all up to half-way to the next.
 */
const COARSE: readonly { readonly kind: WindingKind; readonly severities: readonly Severity[] }[] = [
  { kind: 'openCoil', severities: [{ ohm: 'open', share: 1 }] },
  { kind: 'jointBar', severities: [...coarse([2e-3, 8e-3, 0.03, 0.15], 0.7), { ohm: 'open', share: 0.3 }] },
  { kind: 'jointOneEnd', severities: coarse([4e-3, 0.02, 0.1], 0.6) },
  { kind: 'bridge', severities: coarse([2e-4, 6e-4, 2e-3, 6e-3, 0.02], 0.45) },
  { kind: 'reversed', severities: [{ ohm: 'open', share: 1 }] },
];

function coarse(ohms: readonly number[], share: number): Severity[] {
  return ohms.map((ohm) => ({ ohm, share: share / ohms.length }));
}

/** A fault on the coarse list. */
export interface Second extends SuspectPlace {
  readonly odds: number;
  /** The single suspect that comes nearest. */
  readonly nearest: number;
}

export function listSeconds(suspects: Suspects, odds: Readonly<Record<WindingKind, number>>): Second[] {
  const { design } = suspects;
  const { bars } = design;
  let first = 0;
  return COARSE.flatMap(({ kind, severities }) => {
    const block: SuspectBlock = { kind, variant: 0, severities, first };
    first += bars * severities.length;
    return Array.from({ length: bars }, (_, place) =>
      severities.map(({ share }, severity) => ({
        block,
        place,
        severity,
        odds: (odds[kind] * share) / bars,
        nearest: nearestSuspect(suspects, faultOf(design, block, place, severity))!,
      })),
    ).flat();
  });
}

/** What stands in any case with one more fault beside it, weighed against the meter readings. */
export class Besides {
  readonly seconds: readonly Second[];
  readonly scale: AlteredScale;

  constructor(dictionary: Dictionary, first: AlterableWinding & Standing, seconds: readonly Second[]) {
    const { winding, alteration } = first;
    const { design } = dictionary;
    const altered = seconds.map((second) => ({
      second,
      alteration: alterationOf(design, winding, second.block, second.place, second.severity),
    }));
    const apart = altered.filter((one) => !collide(alteration, one.alteration));
    this.seconds = apart.map(({ second }) => second);
    const both = apart.map((one) => together(alteration, one.alteration));
    this.scale = new AlteredScale(dictionary, first, both, runs(this.seconds));
  }
}

/** Faults as what stands in any case; none but the first may short a coil inside. */
export function standingOf(
  dictionary: Dictionary,
  [first, ...others]: readonly SuspectPlace[],
): AlterableWinding & Standing {
  if (first === undefined) throw new Error('a winding without fault has none beside it');
  const { altered, as: asFirst } = windingOf(dictionary, first);
  const { design } = dictionary;
  const parts = [
    { at: first, as: asFirst },
    ...others.map((at) => ({
      at,
      as: (k: number) => alterationOf(design, altered.winding, at.block, at.place, k),
    })),
  ];
  const whole = (nth: number, severity: number) =>
    parts
      .map(({ at, as }, n) => as(n === nth ? severity : at.severity))
      .reduce((sum, one) => together(sum, one), NOTHING);
  return {
    ...altered,
    alteration: whole(0, first.severity),
    beside: parts.map(({ at }, n) => stepsOf(at).map((severity) => whole(n, severity))),
  };
}

/** Severities a step below and above. */
function stepsOf({ block: { severities }, severity }: SuspectPlace): number[] {
  if (severities[severity]!.ohm === 'open') return [];
  return [severity - 1, severity + 1].filter(
    (k) => k >= 0 && k < severities.length && severities[k]!.ohm !== 'open',
  );
}

/** The winding a fault can be altered in, and how it alters it by severity. */
function windingOf(
  dictionary: Dictionary,
  { block, place, severity }: SuspectPlace,
): { readonly altered: AlterableWinding; readonly as: (severity: number) => Alteration } {
  const { design } = dictionary;
  const fault = faultOf(design, block, place, severity);
  if (fault.kind !== 'turnShort' && fault.kind !== 'coilShort') {
    const { winding } = dictionary;
    return { altered: { winding, network: null }, as: (k) => alterationOf(design, winding, block, place, k) };
  }
  const { topology, port } = dividedWinding(design, fault);
  const winding = jointedWinding(design, topology);
  const as = (k: number): Alteration => ({
    ...NOTHING,
    ports: [port],
    inverse: [block.severities[k]!.ohm as number],
  });
  return { altered: { winding, network: dictionary.network(winding.topology) }, as };
}

/** Two faults of one joint, one bridge or one bar's joint are not two faults. */
function collide(one: Alteration, other: Alteration): boolean {
  const ports = one.ports.some((p) => other.ports.some((q) => p.a === q.a && p.b === q.b));
  const bars = one.inFront.some(({ bar }) => other.inFront.some((also) => also.bar === bar));
  return ports || bars;
}

/** Runs of seconds that differ in severity only. */
function runs(seconds: readonly Second[]): Run[] {
  const found: Run[] = [];
  seconds.forEach(({ block, severity }, k) => {
    if (severity === 0) found.push({ severities: block.severities, first: k });
  });
  return found;
}
