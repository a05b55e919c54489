import { useState } from 'preact/hooks';
import type { Place } from '../../../../bench/places.ts';
import { placeWords } from '../../../../bench/placeWords.ts';
import { touchables } from '../../../../bench/touchables.ts';
import { CLUE_WORDS } from '../../../../bench/words.ts';
import { Button } from '../../../shared/Button.tsx';
import { SelectField } from '../../../shared/Field.tsx';
import { spoken, term } from '../../../shared/words.ts';
import { Group } from './Group.tsx';
import type { GroupProps } from './groups.ts';

/** Lens and chalk: what is looked at, and the one bar that is marked. */
export function LookGroup(props: GroupProps) {
  const { seen, geometry, send, vocabulary } = props;
  const all = touchables(geometry, seen).map((one) => ({ ...one, label: spoken(one.label, vocabulary) }));
  const seeable = all.filter(({ actions }) => actions.some((act) => act.type === 'lens.look'));
  const markable = all.filter(({ actions }) => actions.some((act) => act.type === 'chalk.mark'));
  const looked = usePlace(seeable);
  const marked = usePlace(markable);
  const mark = all
    .find(({ place }) => place === marked.place)
    ?.actions.find((act) => act.type === 'chalk.mark');
  return (
    <Group title="Lens and chalk" state={spoken(stateWords(props), vocabulary)}>
      <div class="touch">
        <SelectField
          label="Look at"
          value={looked.place}
          options={seeable.map(({ place, label }) => ({ value: place, label }))}
          onChange={looked.choose}
        />
        <Button
          keyHint="V"
          label="Look at it through the lens"
          onPress={() => send({ type: 'lens.look', place: looked.place })}
        >
          Look
        </Button>
      </div>
      {mark ? (
        <div class="touch">
          <SelectField
            label={`Chalk a ${term('bar', vocabulary)}`}
            value={marked.place}
            options={markable.map(({ place, label }) => ({ value: place, label }))}
            onChange={marked.choose}
          />
          <Button keyHint="M" label="Mark: put the chalk there" onPress={() => send(mark)}>
            Mark
          </Button>
        </div>
      ) : (
        <p class="group-state">A hand must be free to chalk a {term('bar', vocabulary)}.</p>
      )}
    </Group>
  );
}

interface ChosenPlace {
  readonly place: Place;
  readonly choose: (place: Place) => void;
}

/** The place chosen, or the first of those there are once it has gone out of reach. */
function usePlace(offered: readonly { readonly place: Place }[]): ChosenPlace {
  const [chosen, choose] = useState<Place | null>(null);
  const kept = offered.some(({ place }) => place === chosen) ? chosen : null;
  return { place: kept ?? offered[0]?.place ?? 'core', choose };
}

function stateWords({ seen, geometry }: GroupProps): string {
  const chalk = seen.chalkedBar === null ? 'No bar is chalked.' : 'One bar is chalked: count from it.';
  if (!seen.look) return chalk;
  const clues = seen.look.sees.map((clue) => CLUE_WORDS[clue]).join(', ') || 'nothing to see';
  return `Under the lens, ${placeWords(geometry, seen, seen.look.place)}: ${clues}. ${chalk}`;
}
