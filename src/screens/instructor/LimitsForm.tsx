import type { Scenario, ScenarioPublic } from '../../scenario/scenario.ts';
import { NumberField } from './NumberField.tsx';
import { withLimit } from './partEdits.ts';

export interface LimitsFormProps {
  readonly scenario: Scenario;
  readonly wrong: (path: string) => string | undefined;
  readonly onChange: (scenario: Scenario) => void;
}

const LIMITS: readonly (readonly [keyof NonNullable<ScenarioPublic['limits']>, string])[] = [
  ['commutatorDiameterMm', 'Least commutator diameter, mm'],
  ['runOutMm', 'Most run-out, mm'],
  ['undercutMm', 'Least depth of the mica, mm'],
  ['brushLengthMm', 'Least brush length, mm'],
  ['insulationMohm', 'Least insulation, MΩ'],
];

/** Limits the card sets for the parts, where they are not the usual ones. */
export function LimitsForm({ scenario, wrong, onChange }: LimitsFormProps) {
  return (
    <details class="in-wear">
      <summary>Limits on the card</summary>
      <p class="field-hint">Left empty: the usual ones.</p>
      <div class="in-row">
        {LIMITS.map(([what, label]) => (
          <NumberField
            key={what}
            label={label}
            value={scenario.public.limits?.[what] ?? null}
            problem={wrong(`public.limits.${what}`)}
            onInput={(value) => onChange(withLimit(scenario, what, value))}
          />
        ))}
      </div>
    </details>
  );
}
