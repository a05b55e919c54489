import type { ArmatureDesign } from './armature.ts';
import type { ArmatureFault } from './armatureFault.ts';
import { coilPlaces } from './winding.ts';
import type { Objection } from './windingRules.ts';

/** Resistances a fault may have, ohm: a hard weld to a leak that still counts as a path. */
const HARD = 1e-6;
const LEAK = 1e9;

/**
 * Refuses a fault this armature cannot have, with the reason; an empty list means it can.
 * Paths are relative to the fault. The design must have passed `checkWinding`.
 */
export function checkFault(a: ArmatureDesign, fault: ArmatureFault): Objection[] {
  switch (fault.kind) {
    case 'openCoil':
    case 'reversedCoil':
      return coil(a, 'coil', fault.coil);
    case 'riserJoint':
      return [...bar(a, fault.bar), ...riserForm(fault.form), ...jointOhm(fault.ohm)];
    case 'bridgedBars':
      return [...bar(a, fault.bar), ...ohm(fault.ohm, HARD, 1e4), ...bridgeMetal(fault.by)];
    case 'turnShort':
      return [...coil(a, 'coil', fault.coil), ...turns(a, fault.turns), ...ohm(fault.ohm, HARD, 1e4)];
    case 'coilShort':
      return coilShort(a, fault.topCoil, fault.bottomCoil, fault.ohm);
    case 'groundedBar':
      return [...bar(a, fault.bar), ...ohm(fault.ohm, HARD, LEAK)];
    case 'groundedCoil':
      return [...coil(a, 'coil', fault.coil), ...fraction(fault.fraction), ...ohm(fault.ohm, HARD, LEAK)];
    case 'weakInsulation':
      return [...ohm(fault.ohm, 1e3, LEAK), ...breakdown(fault.breakdownV)];
    case 'dirtyCommutator':
      return [];
    default:
      return [
        {
          path: 'kind',
          sentence: `Expected a known kind of fault, but ${say((fault as { kind: unknown }).kind)} came.`,
        },
      ];
  }
}

function say(value: unknown): string {
  return typeof value === 'string' ? `"${value}"` : String(value);
}

function within(path: string, value: number, low: number, high: number, what: string): Objection[] {
  if (Number.isFinite(value) && value >= low && value <= high) return [];
  return [{ path, sentence: `Expected ${what} from ${low} to ${high}, but ${say(value)} came.` }];
}

function index(path: string, value: number, count: number, what: string): Objection[] {
  if (Number.isInteger(value) && value >= 0 && value < count) return [];
  return [
    {
      path,
      sentence: `Expected a ${what} from 0 to ${count - 1} (this armature has ${count}), but ${say(value)} came.`,
    },
  ];
}

function bar(a: ArmatureDesign, value: number): Objection[] {
  return index('bar', value, a.bars, 'bar');
}

function coil(a: ArmatureDesign, path: string, value: number): Objection[] {
  return index(path, value, a.bars, 'coil');
}

function ohm(value: number, low: number, high: number): Objection[] {
  return within('ohm', value, low, high, 'a resistance in ohm');
}

function jointOhm(value: number | 'open'): Objection[] {
  if (value === 'open') return [];
  if (typeof value === 'number') return ohm(value, HARD, 1e6);
  return [{ path: 'ohm', sentence: `Expected a resistance in ohm or "open", but ${say(value)} came.` }];
}

function oneOf(path: string, value: string, allowed: readonly string[]): Objection[] {
  if (allowed.includes(value)) return [];
  return [{ path, sentence: `Expected ${allowed.map(say).join(' or ')}, but ${say(value)} came.` }];
}

function riserForm(form: string): Objection[] {
  return oneOf('form', form, ['bar', 'oneEnd', 'bothEnds']);
}

function bridgeMetal(by: string): Objection[] {
  return oneOf('by', by, ['copper', 'carbon']);
}

function turns(a: ArmatureDesign, value: number): Objection[] {
  if (Number.isInteger(value) && value >= 1 && value <= a.turns) return [];
  return [
    {
      path: 'turns',
      sentence: `Expected a whole number of turns from 1 to ${a.turns} (a coil has ${a.turns}), but ${say(value)} came.`,
    },
  ];
}

function fraction(value: number): Objection[] {
  return within('fraction', value, 0, 1, 'a fraction');
}

function breakdown(value: number | null): Objection[] {
  return value === null ? [] : within('breakdownV', value, 1, 1e5, 'null or a peak voltage');
}

/** The two sides must lie above one another: the top coil's top side and the bottom coil's bottom side in one slot. */
function coilShort(a: ArmatureDesign, top: number, bottom: number, resistance: number): Objection[] {
  const wrong = [...coil(a, 'topCoil', top), ...coil(a, 'bottomCoil', bottom), ...ohm(resistance, HARD, 1e4)];
  if (wrong.length > 0) return wrong;
  const places = coilPlaces(a);
  const slot = places[top]!.topSlot;
  if (places[bottom]!.bottomSlot === slot) return [];
  const fits = places.flatMap((p, i) => (p.bottomSlot === slot ? [i] : []));
  return [
    {
      path: 'bottomCoil',
      sentence:
        `Expected a coil that lies under coil ${top} in slot ${slot} (${fits.join(' or ')}), but coil ${bottom} ` +
        `came, whose lower side lies in slot ${places[bottom]!.bottomSlot}.`,
    },
  ];
}
