import { useState } from 'preact/hooks';
import { barOf, type Place } from '../../../../bench/places.ts';
import { LEAD_WORDS } from '../../../../bench/placeWords.ts';
import { type Touchable, touchables } from '../../../../bench/touchables.ts';
import { Button } from '../../../shared/Button.tsx';
import { SelectField } from '../../../shared/Field.tsx';
import { spoken, term } from '../../../shared/words.ts';
import { nextBarFor } from '../keys.ts';
import type { LeadGroupProps } from './LeadGroup.tsx';

/** Every place the lead's tip can be put on now, in the order the bench lists them, and the bars next to it. */
export function TouchActs(props: LeadGroupProps) {
  const { lead, seen, geometry, send, vocabulary } = props;
  const places = touchables(geometry, seen).filter(({ actions }) =>
    actions.some((act) => touches(act, lead)),
  );
  const [chosen, setChosen] = useState<Place | null>(null);
  const place = places.some((one) => one.place === chosen) ? chosen : (places[0]?.place ?? null);
  const name = LEAD_WORDS[lead];
  const onBar = seen.leads[lead].touches !== null && barOf(seen.leads[lead].touches) !== null;
  const step = (by: 1 | -1) =>
    send({ type: 'lead.touch', lead, place: nextBarFor(lead, by, { seen, geometry }) });
  const bar = term('bar', vocabulary);
  return (
    <>
      {place === null ? null : (
        <div class="touch">
          <SelectField
            label={`Where ${name} goes`}
            value={place}
            options={places.map((one) => ({ value: one.place, label: spoken(one.label, vocabulary) }))}
            onChange={setChosen}
          />
          <Button
            label={`Touch: put ${name} there`}
            onPress={() => send({ type: 'lead.touch', lead, place })}
          >
            Touch
          </Button>
        </div>
      )}
      {onBar ? (
        <div class="acts">
          <Button keyHint="↓" label={`Next ${bar}: ${name} one further on`} onPress={() => step(1)}>
            Next {bar}
          </Button>
          <Button keyHint="↑" label={`${bar} before: ${name} one back`} onPress={() => step(-1)}>
            {bar} before
          </Button>
        </div>
      ) : null}
    </>
  );
}

function touches(act: Touchable['actions'][number], lead: LeadGroupProps['lead']): boolean {
  return act.type === 'lead.touch' && act.lead === lead;
}
