import type { Clue, LookView } from '../../bench/observation.ts';
import { BRASS } from '../materials.ts';
import { type Pen, radial } from '../pen.ts';
import { paintCaption } from './caption.ts';
import { paintClue } from './clues.ts';
import { paintRound } from './round.ts';
import { paintSubject } from './subjects.ts';

/** What each clue is called. A clue is something seen, never a verdict. */
const CLUE_WORDS: Readonly<Record<Clue, string>> = {
  brightSolder: 'bright, smooth solder',
  solderThrown: 'solder thrown out',
  burntBarEdge: 'burnt bar edge',
  metalAcrossMica: 'metal across the mica',
  carbonAcrossMica: 'carbon across the mica',
  charredInsulation: 'charred insulation',
  rubbedCore: 'core has been rubbing',
  dirt: 'dust and dirt',
  wornSurface: 'worn, grooved surface',
  looseRivet: 'loose rivet',
  brokenPigtail: 'broken pigtail',
  burntPigtail: 'burnt pigtail',
  charredFieldCoil: 'charred coil wrapping',
  looseFieldCoil: 'coil loose on its pole',
  darkenedInsulator: 'darkened insulator',
  crackedHandle: 'cracked handle',
  frayedCable: 'frayed cable',
  brokenFilament: 'broken filament',
  blackenedBulb: 'blackened bulb',
};

/**
 * The lens's round: the place magnified, its clues drawn and named. Pen's origin at the middle of the glass.
 * @param say puts the names into the usage the reader chose; null leaves them out
 */
export function paintLook(pen: Pen, r: number, look: LookView, say: ((text: string) => string) | null): void {
  paintRound(pen, r, BRASS, 8, () => {
    paintSubject(pen, r, look.place);
    for (const clue of look.sees) paintClue(pen, r, clue);
    pen.fillStyle = radial(pen, -r * 0.2, -r * 0.3, r * 0.4, r * 1.15, [
      [0, 'rgba(255,255,255,.06)'],
      [0.7, 'rgba(0,0,0,.04)'],
      [1, 'rgba(0,0,0,.55)'],
    ]);
    pen.fillRect(-r, -r, r * 2, r * 2);
  });
  if (say === null) return;
  const names = look.sees.map((clue) => CLUE_WORDS[clue]).join(' · ');
  paintCaption(pen, r, say(names || 'nothing to remark'));
}
