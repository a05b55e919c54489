import { RANGES_A, type RangeA } from '../../../bench/action.ts';
import type { Observation } from '../../../bench/observation.ts';
import { TEST_VOLTS, type TestVolt } from '../../../bench/paper.ts';
import { Button } from '../../shared/Button.tsx';
import { RadioField, SelectField, TextField } from '../../shared/Field.tsx';
import { FIGURES, type FigureTest, isFigureTest, isLampTest } from './entryKinds.ts';
import { figureShown, nearestReading } from './reading.ts';
import type { EntryDraft } from './sheetEntry.ts';

export interface ResultFieldProps {
  readonly draft: EntryDraft;
  readonly seen: Observation;
  /** In guided work the reading can be taken over; else it is the learner's own. */
  readonly guided: boolean;
  readonly change: (part: Partial<EntryDraft>) => void;
}

/** What the learner saw or read, in the form the test asks for. */
export function ResultField(props: ResultFieldProps) {
  const { draft, change } = props;
  const { test } = draft;
  if (test === 'look') return null;
  if (test === 'spaced' || test === 'neighbour') return <ReadingFields {...props} />;
  if (isFigureTest(test)) return <FigureFields {...props} test={test} />;
  return (
    <div class="entry-wide" data-first>
      {isLampTest(test) ? (
        <RadioField<EntryDraft['lamp']>
          label="The lamp was"
          value={draft.lamp}
          options={asIs(LAMP)}
          onChange={(lamp) => change({ lamp })}
        />
      ) : (
        <RadioField<EntryDraft['strip']>
          label="The strip was"
          value={draft.strip}
          options={asIs(STRIP)}
          onChange={(strip) => change({ strip })}
        />
      )}
    </div>
  );
}

const LAMP = ['dark', 'dim', 'lit'] as const;
const STRIP = ['still', 'pulled', 'buzzing'] as const;

function asIs<T extends string>(values: readonly T[]): readonly { readonly value: T; readonly label: T }[] {
  return values.map((value) => ({ value, label: value }));
}

function ReadingFields({ draft, change, guided, seen }: ResultFieldProps) {
  return (
    <>
      <div data-first>
        <TextField
          label="Needle at"
          unit="A"
          inputMode="decimal"
          value={draft.reading}
          onInput={(reading) => change({ reading })}
        />
      </div>
      <SelectField
        label="Range"
        value={String(draft.rangeA)}
        options={RANGES_A.map((range) => ({ value: String(range), label: `${range} A` }))}
        onChange={(range) => change({ rangeA: Number(range) as RangeA })}
      />
      {guided && seen.needle.atRest && !seen.needle.pegged ? (
        <ReadForMe onPress={() => change({ reading: String(nearestReading(seen)), rangeA: seen.rangeA })} />
      ) : null}
    </>
  );
}

function FigureFields({ draft, change, guided, seen, test }: ResultFieldProps & { test: FigureTest }) {
  const { label, unit } = FIGURES[test];
  const shown = guided ? figureShown(test, seen) : null;
  return (
    <>
      <div data-first>
        <TextField
          label={label}
          unit={unit}
          inputMode="decimal"
          value={draft.reading}
          onInput={(reading) => change({ reading })}
        />
      </div>
      {test === 'megohm' ? (
        <>
          <SelectField
            label="At"
            value={String(draft.testVolt)}
            options={TEST_VOLTS.map((volt) => ({ value: String(volt), label: `${volt} V` }))}
            onChange={(volt) => change({ testVolt: Number(volt) as TestVolt })}
          />
          <div class="entry-wide entry-aside">
            <Button kind="quiet" onPress={() => change({ reading: 'over' })}>
              It is beyond its scale
            </Button>
          </div>
        </>
      ) : null}
      {shown === null ? null : <ReadForMe onPress={() => change({ reading: shown })} />}
    </>
  );
}

function ReadForMe({ onPress }: { readonly onPress: () => void }) {
  return (
    <Button kind="quiet" onPress={onPress}>
      Read it for me
    </Button>
  );
}
