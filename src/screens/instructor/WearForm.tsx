import type { Issue, Scenario } from '../../scenario/scenario.ts';
import { brushName } from '../shared/lineWords.ts';
import { capital, type Vocabulary } from '../shared/words.ts';
import { WORN_BRUSHES } from './matSpots.ts';
import { NumberField } from './NumberField.tsx';
import type { Open } from './PartsForm.tsx';
import { FRESH_BRUSH_MM, type WornLength, withBrush, withWear } from './partEdits.ts';

export interface WearFormProps {
  readonly scenario: Scenario;
  readonly open: Open;
  readonly issues: readonly Issue[];
  readonly vocabulary: Vocabulary;
  readonly onChange: (scenario: Scenario) => void;
}

const LENGTHS: readonly (readonly [WornLength, string])[] = [
  ['commutatorDiameterMm', 'Commutator diameter, mm'],
  ['runOutMm', 'Run-out, mm'],
  ['undercutMm', 'Depth of the mica, mm'],
];

/** Wear for the gauges to find, of what lies open. */
export function WearForm({ scenario, open, issues, vocabulary, onChange }: WearFormProps) {
  if (open === 'bench') return null;
  const { wear = {} } = scenario.hidden;
  const wrong = (path: string) => issues.find((issue) => issue.path === `hidden.wear.${path}`)?.sentence;
  const brushes =
    open === 'armature' ? [] : WORN_BRUSHES.filter((nth) => nth < 2 === (open === 'fieldFrame'));
  return (
    <details class="in-wear">
      <summary>Wear, for the gauges</summary>
      <p class="field-hint">Left empty: as on a part in good order.</p>
      <div class="in-row">
        {open === 'armature'
          ? LENGTHS.map(([what, label]) => (
              <NumberField
                key={what}
                label={label}
                value={wear[what] ?? null}
                problem={wrong(what)}
                onInput={(mm) => onChange(withWear(scenario, what, mm))}
              />
            ))
          : brushes.map((brush) => (
              <NumberField
                key={brush}
                label={`${capital(brushName(brush, vocabulary))}, mm`}
                value={lengthOf(wear.brushLengthsMm?.[brush])}
                problem={wrong(`brushLengthsMm[${brush}]`)}
                onInput={(mm) => onChange(withBrush(scenario, brush, mm))}
              />
            ))}
      </div>
    </details>
  );
}

const lengthOf = (mm: number | undefined) => (mm === undefined || mm === FRESH_BRUSH_MM ? null : mm);
