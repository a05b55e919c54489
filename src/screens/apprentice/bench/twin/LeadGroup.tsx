import { useState } from 'preact/hooks';
import type { LeadView } from '../../../../bench/observation.ts';
import { barPlace, type LeadId, leadSet, type Place, partner } from '../../../../bench/places.ts';
import { Button } from '../../../shared/Button.tsx';
import { SelectField } from '../../../shared/Field.tsx';
import { capital, spoken } from '../../../shared/words.ts';
import { LEAD_NAMES, placeWords, reachableBars } from '../places.ts';
import { Group } from './Group.tsx';
import type { GroupProps } from './groups.ts';

export interface LeadGroupProps extends GroupProps {
  readonly lead: LeadId;
  /** True for the lead the tip keys move. */
  readonly inUse: boolean;
}

/** One lead: take it, put its tip somewhere, leave it somewhere. */
export function LeadGroup(props: LeadGroupProps) {
  const { lead, seen, send, vocabulary } = props;
  const view = seen.leads[lead];
  const touched = view.touches && spoken(placeWords(view.touches, seen, props.geometry), vocabulary);
  return (
    <Group
      title={capital(LEAD_NAMES[lead])}
      state={`${leadState(view, touched)}${props.inUse ? ' In use.' : ''}`}
    >
      {view.at === 'hand' ? null : <TakeActs {...props} />}
      {view.at === 'hand' ? <TouchActs {...props} /> : null}
      {view.at === 'holster' ? null : (
        <div class="acts">
          {view.touches ? (
            <Button
              keyHint="U"
              label={`Lift: ${LEAD_NAMES[lead]}`}
              onPress={() => send({ type: 'lead.lift', lead })}
            >
              Lift
            </Button>
          ) : null}
          {view.at === 'hand' && view.touches && leadSet(lead) === 'ammeter' ? (
            <Button
              keyHint="S"
              label={`Into the stand: ${LEAD_NAMES[lead]}`}
              onPress={() => send({ type: 'lead.clamp', lead })}
            >
              Into the stand
            </Button>
          ) : null}
          <Button
            keyHint="B"
            label={`To the holster: ${LEAD_NAMES[lead]}`}
            onPress={() => send({ type: 'lead.holster', lead })}
          >
            To the holster
          </Button>
        </div>
      )}
    </Group>
  );
}

function leadState(view: LeadView, touched: string | null): string {
  const where = touched ? ` on ${touched}` : ', touching nothing';
  if (view.at === 'holster') return 'In its holster.';
  if (view.at === 'stand') return `In the stand${where}.`;
  return `In the hand by the ${view.grip === 'tip' ? 'bare tip' : 'handle'}${where}.`;
}

/** Taking a lead by its tip is shown before it is done: a second press does it, leaving undoes it. */
function TakeActs({ lead, send }: LeadGroupProps) {
  const [tipAsked, setTipAsked] = useState(false);
  const take = (grip: 'handle' | 'tip') => {
    setTipAsked(false);
    send({ type: 'lead.take', lead, grip });
  };
  return (
    <div class="acts">
      <Button
        keyHint={String(['ammeter.1', 'ammeter.2', 'lamp.1', 'lamp.2'].indexOf(lead) + 1)}
        label={`By the handle: ${LEAD_NAMES[lead]}`}
        onPress={() => take('handle')}
      >
        By the handle
      </Button>
      {tipAsked ? (
        <>
          <Button
            kind="danger"
            label={`Fingers on bare metal: do it, ${LEAD_NAMES[lead]}`}
            onPress={() => take('tip')}
          >
            Fingers on bare metal: do it
          </Button>
          <Button kind="quiet" label="Leave it: the tip stays alone" onPress={() => setTipAsked(false)}>
            Leave it
          </Button>
        </>
      ) : (
        <Button kind="quiet" label={`By the tip… ${LEAD_NAMES[lead]}`} onPress={() => setTipAsked(true)}>
          By the tip…
        </Button>
      )}
    </div>
  );
}

function TouchActs(props: LeadGroupProps) {
  const { lead, seen, geometry, send, vocabulary } = props;
  const places: readonly Place[] = [
    ...reachableBars(seen, geometry).map(barPlace),
    'core',
    'shaft',
    `tip:${partner(lead)}`,
  ];
  const [chosen, setChosen] = useState<Place>(places[0]!);
  const place = places.includes(chosen) ? chosen : places[0]!;
  return (
    <div class="touch">
      <SelectField
        label={`Where ${LEAD_NAMES[lead]} goes`}
        value={place}
        options={places.map((value) => ({
          value,
          label: spoken(placeWords(value, seen, geometry), vocabulary),
        }))}
        onChange={setChosen}
      />
      <Button
        label={`Touch: put ${LEAD_NAMES[lead]} there`}
        onPress={() => send({ type: 'lead.touch', lead, place })}
      >
        Touch
      </Button>
    </div>
  );
}
