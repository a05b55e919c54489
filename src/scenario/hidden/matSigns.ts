import type { Place } from '../../bench/places.ts';
import type { BrushPlateFault } from '../../engine/parts/brushPlate.ts';
import type { FieldFrameFault } from '../../engine/parts/fieldFrame.ts';
import type { BenchFault } from './benchFault.ts';
import type { Sign } from './sign.ts';

/** What the lens shows on field frame, brush plate and bench. */

/** The coils are looked at in the case, where one cannot say which branch a scorched wrapping belongs to. */
export function fieldSigns(fault: FieldFrameFault): Sign[] {
  const coils: Place = 'field:case';
  switch (fault.kind) {
    case 'openCoil':
      return [{ place: coils, clue: 'charredFieldCoil', chance: 0.4 }];
    case 'groundedCoil':
      return [
        { place: coils, clue: 'charredFieldCoil', chance: 0.4 },
        { place: coils, clue: 'looseFieldCoil', chance: 0.35 },
      ];
    case 'shortedTurns':
      return [{ place: coils, clue: 'charredFieldCoil', chance: 0.55 }];
    case 'weakInsulation':
      return [{ place: coils, clue: 'dirt', chance: 0.7 }];
    case 'brushJoint':
      return jointSigns(fault.ohm, `field:brush${fault.brush}`);
  }
}

function jointSigns(ohm: number | 'open', place: Place): Sign[] {
  return ohm === 'open'
    ? [
        { place, clue: 'brokenPigtail', chance: 0.6 },
        { place, clue: 'burntPigtail', chance: 0.35 },
      ]
    : [{ place, clue: 'burntPigtail', chance: 0.6 }];
}

export function plateSigns(fault: BrushPlateFault): Sign[] {
  const place = fault.holder;
  switch (fault.kind) {
    case 'dirt':
      return [
        { place, clue: 'dirt', chance: 0.85 },
        { place: 'plate:metal', clue: 'dirt', chance: 0.4 },
      ];
    case 'looseRivet':
      return [{ place, clue: 'looseRivet', chance: 0.6 }];
    case 'insulatorDown':
      return [{ place, clue: 'darkenedInsulator', chance: 0.6 }];
    case 'brokenPigtail':
      return jointSigns('open', place);
  }
}

/** A crack that lets fingers through can always be found; a cable broken inside mostly looks whole. */
export function benchSigns(fault: BenchFault): Sign[] {
  switch (fault.kind) {
    case 'blownLamp':
      return [
        { place: 'lampBulb', clue: 'brokenFilament', chance: 0.7 },
        { place: 'lampBulb', clue: 'blackenedBulb', chance: 0.3 },
      ];
    case 'crackedHandle':
      return [{ place: `handle:${fault.lead}`, clue: 'crackedHandle', chance: 1 }];
    case 'brokenLead':
      return [{ place: `handle:${fault.lead}`, clue: 'frayedCable', chance: 0.4 }];
    case 'ammeterZero':
      return [];
  }
}

/** Signs a sound part or bench shows too. */
export function everydayOnMat(place: Place): Sign[] {
  if (place === 'lampBulb') return [{ place, clue: 'blackenedBulb', chance: 0.2 }];
  if (place.startsWith('handle:')) return [{ place, clue: 'frayedCable', chance: 0.06 }];
  if (place === 'field:case') {
    return [
      { place, clue: 'dirt', chance: 0.3 },
      { place, clue: 'charredFieldCoil', chance: 0.05 },
      { place, clue: 'looseFieldCoil', chance: 0.04 },
    ];
  }
  if (place.startsWith('field:brush')) return [{ place, clue: 'burntPigtail', chance: 0.04 }];
  return place.startsWith('plate:') ? everydayOnPlate(place) : [];
}

function everydayOnPlate(place: Place): Sign[] {
  const dirt: Sign = { place, clue: 'dirt', chance: 0.25 };
  if (place === 'plate:metal') return [dirt];
  const rivet: Sign = { place, clue: 'looseRivet', chance: 0.05 };
  const dark: Sign = { place, clue: 'darkenedInsulator', chance: 0.05 };
  return place.startsWith('plate:insulated') ? [dirt, rivet, dark] : [dirt, rivet];
}
