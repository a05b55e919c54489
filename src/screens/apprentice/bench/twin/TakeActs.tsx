import { useState } from 'preact/hooks';
import type { Grip } from '../../../../bench/action.ts';
import { LEAD_WORDS } from '../../../../bench/placeWords.ts';
import { Button } from '../../../shared/Button.tsx';
import { leadKeyOf } from '../keys.ts';
import type { LeadGroupProps } from './LeadGroup.tsx';

/** Taking a lead by its tip is shown before it is done: a second press does it, leaving it costs nothing. */
export function TakeActs({ lead, send }: LeadGroupProps) {
  const [tipAsked, setTipAsked] = useState(false);
  const name = LEAD_WORDS[lead];
  const take = (grip: Grip) => {
    setTipAsked(false);
    send({ type: 'lead.take', lead, grip });
  };
  return (
    <div class="acts">
      <Button {...leadKeyOf(lead)} label={`By the handle: take ${name}`} onPress={() => take('handle')}>
        By the handle
      </Button>
      {tipAsked ? (
        <>
          <Button kind="danger" label={`Fingers on bare metal: take ${name} so`} onPress={() => take('tip')}>
            Fingers on bare metal
          </Button>
          <Button kind="quiet" label="Better not: leave the tip alone" onPress={() => setTipAsked(false)}>
            Better not
          </Button>
        </>
      ) : (
        <Button kind="quiet" label={`By the tip… ${name}`} onPress={() => setTipAsked(true)}>
          By the tip…
        </Button>
      )}
    </div>
  );
}
