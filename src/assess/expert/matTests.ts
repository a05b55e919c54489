import { MAT_PARTS, type MatPart } from '../../bench/action.ts';
import { FIELD_PLACES, type FieldPlace, PLATE_PLACES, type Place } from '../../bench/places.ts';
import type { Hands } from './hands.ts';
import { beginLamp, endLamp, lampBetween, lift, watch } from './lamp.ts';
import {
  type FieldBrushPlace,
  type Glow,
  type HolderPlace,
  type HolderSeen,
  lookRemark,
  type Notes,
} from './notes.ts';

/** Field frame and brush plate, tested with the lamp while an armature closes the growler's circuit. */

const FIELD_BRUSHES: readonly FieldBrushPlace[] = ['field:brush1', 'field:brush2'];
const INSULATED: readonly HolderPlace[] = ['plate:insulated1', 'plate:insulated2'];
const EARTHED: readonly HolderPlace[] = ['plate:earthed1', 'plate:earthed2'];
const PLACES: Readonly<Record<MatPart, readonly Place[]>> = {
  fieldFrame: FIELD_PLACES,
  brushPlate: PLATE_PLACES,
};

/** Brings a part forward, the other one back where it stands. */
export function bringForward(hands: Hands, part: MatPart): void {
  const { mat } = hands.see();
  if (mat[part] === 'forward') return;
  const other = MAT_PARTS.find((one) => one !== part && mat[one] === 'forward');
  if (other !== undefined) hands.do({ type: 'part.putBack', part: other });
  hands.do({ type: 'part.takeUp', part });
}

/** Every place of a part under the lens, and a line about it. */
export function lookAtMat(hands: Hands, part: MatPart): Notes['looks'] {
  bringForward(hands, part);
  const looks = PLACES[part].map((place) => ({
    place,
    sees: hands.do({ type: 'lens.look', place }).look?.sees ?? [],
  }));
  const found = looks.filter(({ sees }) => sees.length > 0).length;
  const remark = lookRemark(found);
  hands.do({ type: 'sheet.write', line: { test: 'look', part, count: null, remark } });
  return looks;
}

/** The two field brushes kept apart, or one good branch hides the other. */
export function partBrushes(hands: Hands): void {
  bringForward(hands, 'fieldFrame');
  if (!hands.see().brushesApart) hands.do({ type: 'brushes.part' });
}

/** Motor terminal to each brush, then case to each brush, as far as the card allows. */
export function fieldTests(hands: Hands): Pick<Notes, 'continuity' | 'fieldInsulation'> {
  const { tests } = hands.job;
  partBrushes(hands);
  beginLamp(hands);
  const continuity = tests.includes('fieldContinuity')
    ? FIELD_BRUSHES.map((at) => lampLine(hands, 'fieldContinuity', 'field:terminal', at))
    : [];
  const cutOff = continuity.length > 0 && continuity.every(({ lamp }) => lamp === 'dark');
  // Coils that no brush reaches any more are reached from the terminal.
  const ends: readonly FieldPlace[] = cutOff ? [...FIELD_BRUSHES, 'field:terminal'] : FIELD_BRUSHES;
  const fieldInsulation = tests.includes('fieldInsulation')
    ? ends.map((at) => lampLine(hands, 'fieldInsulation', 'field:case', at))
    : [];
  endLamp(hands);
  return { continuity, fieldInsulation };
}

function lampLine<P extends FieldPlace>(
  hands: Hands,
  test: 'fieldContinuity' | 'fieldInsulation',
  from: FieldPlace,
  at: P,
): { readonly at: P; readonly lamp: Glow } {
  const lamp = lampBetween(hands, from, at);
  hands.do({ type: 'sheet.write', line: { test, part: 'fieldFrame', count: null, at, lamp } });
  return { at, lamp };
}

/** Plate metal to each holder, as far as the card allows; every holder also with the probe leant on. */
export function plateTests(hands: Hands): HolderSeen[] {
  const { tests } = hands.job;
  bringForward(hands, 'brushPlate');
  beginLamp(hands);
  const insulated = tests.includes('plateInsulation') ? overHolders(hands, 'plateInsulation', INSULATED) : [];
  const earthed = tests.includes('plateEarthed') ? overHolders(hands, 'plateEarthed', EARTHED) : [];
  endLamp(hands);
  return [...insulated, ...earthed];
}

function overHolders(
  hands: Hands,
  test: 'plateInsulation' | 'plateEarthed',
  holders: readonly HolderPlace[],
): HolderSeen[] {
  return holders.map((holder) => {
    const seen = overHolder(hands, holder);
    const moves = seen.alone !== seen.pressed;
    const line = { test, part: 'brushPlate', count: null, at: holder, lamp: seen.alone } as const;
    const remark = `${seen.pressed} when leaned on`;
    hands.do({ type: 'sheet.write', line: moves ? { ...line, remark } : line });
    return seen;
  });
}

function overHolder(hands: Hands, holder: HolderPlace): HolderSeen {
  hands.do({ type: 'lead.touch', lead: 'lamp.1', place: 'plate:metal' });
  hands.do({ type: 'lead.touch', lead: 'lamp.2', place: holder });
  const alone = watch(hands);
  hands.do({ type: 'lead.lean', lead: 'lamp.2', on: true });
  const pressed = watch(hands);
  hands.do({ type: 'lead.lean', lead: 'lamp.2', on: false });
  lift(hands, 'lamp.2');
  hands.do({ type: 'lead.lift', lead: 'lamp.1' });
  return { holder, alone, pressed };
}
