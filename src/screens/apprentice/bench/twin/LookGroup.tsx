import { useState } from 'preact/hooks';
import type { Observation } from '../../../../bench/observation.ts';
import { barPlace, type Place } from '../../../../bench/places.ts';
import { Button } from '../../../shared/Button.tsx';
import { SelectField } from '../../../shared/Field.tsx';
import { clueWords, spoken } from '../../../shared/words.ts';
import { placeWords, reachableBars } from '../places.ts';
import { Group } from './Group.tsx';
import type { GroupProps } from './groups.ts';

/** Lens and chalk: what is looked at, and the one bar that is marked. */
export function LookGroup(props: GroupProps) {
  const { seen, geometry, send, vocabulary } = props;
  const say = (place: Place) => spoken(placeWords(place, seen, geometry), vocabulary);
  const bars = reachableBars(seen, geometry);
  const places: readonly Place[] = [
    ...bars.flatMap((bar): readonly Place[] => [`riser:${bar}`, barPlace(bar)]),
    'core',
    'shaft',
  ];
  const [looked, setLooked] = useState<Place>(places[0]!);
  const [marked, setMarked] = useState(String(bars[0]));
  const place = places.includes(looked) ? looked : places[0]!;
  const bar = bars.includes(Number(marked)) ? Number(marked) : bars[0]!;
  return (
    <Group title="Lens and chalk" state={lookState(seen, say, props)}>
      <div class="touch">
        <SelectField
          label="Look at"
          value={place}
          options={places.map((value) => ({ value, label: say(value) }))}
          onChange={setLooked}
        />
        <Button label="Look at it through the lens" onPress={() => send({ type: 'lens.look', place })}>
          Look
        </Button>
      </div>
      <div class="touch">
        <SelectField
          label="Chalk a bar"
          value={String(bar)}
          options={bars.map((value) => ({ value: String(value), label: say(barPlace(value)) }))}
          onChange={setMarked}
        />
        <Button label="Mark: put the chalk there" onPress={() => send({ type: 'chalk.mark', bar })}>
          Mark
        </Button>
      </div>
    </Group>
  );
}

function lookState(seen: Observation, say: (place: Place) => string, { vocabulary }: GroupProps): string {
  const chalk = seen.chalkedBar === null ? 'No bar is chalked.' : 'One bar is chalked: count from it.';
  if (!seen.look) return chalk;
  const clues = seen.look.sees.map((clue) => clueWords(clue, vocabulary));
  return `Under the lens, ${say(seen.look.place)}: ${clues.length ? clues.join(', ') : 'nothing to see'}. ${chalk}`;
}
