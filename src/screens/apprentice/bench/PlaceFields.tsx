import { BRUSHES, GAUGES, type PartKind } from '../../../bench/action.ts';
import { partOfBrush } from '../../../bench/touched.ts';
import type { Job } from '../../../scenario/public/job.ts';
import { type Option, SelectField, TextField } from '../../shared/Field.tsx';
import { brushName, gaugeName, matPlaceWords } from '../../shared/lineWords.ts';
import { capital, partWords, type Vocabulary } from '../../shared/words.ts';
import { asksPart, isCounted, placesOf } from './entryKinds.ts';
import type { EntryDraft } from './sheetEntry.ts';

export interface PlaceFieldsProps {
  readonly draft: EntryDraft;
  readonly job: Job;
  readonly vocabulary: Vocabulary;
  readonly change: (part: Partial<EntryDraft>) => void;
}

/** Where the line was read: part, brush or holder, gauge, or bars from the chalk, as the test asks for. */
export function PlaceFields(props: PlaceFieldsProps) {
  const { draft, job, change, vocabulary } = props;
  const places = placesOf(draft);
  return (
    <>
      {asksPart(draft.test) && job.parts.length > 1 ? (
        <div class="entry-wide">
          <SelectField<PartKind>
            label="Part"
            value={draft.part}
            options={job.parts.map((value) => ({ value, label: partWords(value) }))}
            onChange={(part) => change({ part })}
          />
        </div>
      ) : null}
      {places.length > 0 ? (
        <div class="entry-wide">
          <SelectField<EntryDraft['at']>
            label={places.some((place) => place.startsWith('field:')) ? 'Field brush' : 'Holder'}
            value={draft.at}
            options={withNone(
              places.map((value) => ({ value, label: capital(matPlaceWords(value, vocabulary)) })),
            )}
            onChange={(at) => change({ at })}
          />
        </div>
      ) : null}
      {draft.test === 'gauges' ? <GaugeFields {...props} /> : null}
      {isCounted(draft) ? (
        <TextField
          label="From the chalk"
          value={draft.count}
          inputMode="numeric"
          onInput={(count) => change({ count })}
        />
      ) : null}
    </>
  );
}

function GaugeFields({ draft, job, change, vocabulary }: PlaceFieldsProps) {
  const brushes = BRUSHES.filter((brush) => job.parts.includes(partOfBrush(brush)));
  const gauges = GAUGES.filter((gauge) =>
    gauge === 'brushLength' ? brushes.length > 0 : job.parts.includes('armature'),
  );
  return (
    <>
      <div class="entry-wide">
        <SelectField<EntryDraft['gauge']>
          label="Measured"
          value={draft.gauge}
          options={withNone(gauges.map((value) => ({ value, label: capital(gaugeName(value)) })))}
          onChange={(gauge) => change({ gauge })}
        />
      </div>
      {draft.gauge === 'brushLength' ? (
        <div class="entry-wide">
          <SelectField<EntryDraft['brush']>
            label="Brush"
            value={draft.brush}
            options={withNone(
              brushes.map((brush) => ({
                value: `${brush}` as const,
                label: capital(brushName(brush, vocabulary)),
              })),
            )}
            onChange={(brush) => change({ brush })}
          />
        </div>
      ) : null}
    </>
  );
}

/** A choice that begins with nothing chosen. */
function withNone<T extends string>(options: readonly Option<T>[]): readonly Option<T | ''>[] {
  return [{ value: '', label: 'Choose…' }, ...options];
}
