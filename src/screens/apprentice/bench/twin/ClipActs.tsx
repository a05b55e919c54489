import { useState } from 'preact/hooks';
import { barOf, barPlace, type LeadId, type Place } from '../../../../bench/places.ts';
import { LEAD_WORDS, placeWords } from '../../../../bench/placeWords.ts';
import { touchables } from '../../../../bench/touchables.ts';
import { Button } from '../../../shared/Button.tsx';
import { SelectField } from '../../../shared/Field.tsx';
import { capital, spoken } from '../../../shared/words.ts';
import type { GroupProps } from './groups.ts';

export interface ClipActsProps extends GroupProps {
  readonly set: 'tester' | 'drop';
}

/** The two clips of a rail tool: where each lies, and one press to put it somewhere and leave it there. */
export function ClipActs(props: ClipActsProps) {
  return (
    <>
      {(['1', '2'] as const).map((end) => (
        <Clip key={end} {...props} lead={`${props.set}.${end}`} />
      ))}
    </>
  );
}

function Clip({ lead, ...props }: ClipActsProps & { readonly lead: LeadId }) {
  const { seen, geometry, vocabulary, send } = props;
  const [chosen, setChosen] = useState<Place | null>(null);
  const say = (place: Place) => spoken(placeWords(geometry, seen, place), vocabulary);
  const view = seen.leads[lead];
  const places = metalOf(props).filter((place) => place !== view.touches);
  const place = places.find((one) => one === chosen) ?? nextAfter(view.touches, props) ?? places[0];
  const name = capital(LEAD_WORDS[lead]);
  const put = () => {
    if (place === undefined) return;
    setChosen(null);
    const held = view.at === 'hand' || send({ type: 'lead.take', lead, grip: 'handle' });
    if (held && send({ type: 'lead.touch', lead, place })) send({ type: 'lead.clamp', lead });
  };
  const does = view.touches === null ? 'Clip on' : 'Move';
  return (
    <div class="touch">
      {place === undefined ? (
        <p class="group-state">{name}: no metal of a part is within reach.</p>
      ) : (
        <SelectField
          label={view.touches === null ? `${name} goes on` : `${name} is on ${say(view.touches)}; next`}
          value={place}
          options={places.map((value) => ({ value, label: say(value) }))}
          onChange={setChosen}
        />
      )}
      <div class="acts">
        {place === undefined ? null : (
          <Button label={`${does}: ${name}`} onPress={put}>
            {does}
          </Button>
        )}
        {view.at === 'holster' ? null : (
          <Button
            kind="quiet"
            label={`Take off: ${name}`}
            onPress={() => send({ type: 'lead.holster', lead })}
          >
            Take off
          </Button>
        )}
      </div>
    </div>
  );
}

/** Metal of the parts to be judged that a clip reaches now; risers lie under their bars and add nothing. */
function metalOf({ seen, geometry, job }: ClipActsProps): readonly Place[] {
  return touchables(geometry, seen)
    .filter(({ part, reachable }) => part !== null && job.parts.includes(part) && reachable)
    .map(({ place }) => place)
    .filter((place) => !place.startsWith('riser'));
}

/** From a bar a clip goes on to the next one. */
function nextAfter(place: Place | null, { geometry }: ClipActsProps): Place | undefined {
  const bar = place === null ? null : barOf(place);
  return bar === null ? undefined : barPlace((bar + 1) % geometry.bars);
}
