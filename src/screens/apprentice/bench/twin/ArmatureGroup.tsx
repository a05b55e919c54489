import type { Observation } from '../../../../bench/observation.ts';
import { Acts } from '../../../shared/Acts.tsx';
import { Button } from '../../../shared/Button.tsx';
import { term } from '../../../shared/words.ts';
import { Group } from './Group.tsx';
import type { GroupProps } from './groups.ts';

const PART_HEAT: Readonly<Record<Observation['partHeat'], string>> = {
  cool: '',
  warm: ' It is warm.',
  hot: ' It is hot.',
  smoking: ' It smokes.',
};

export function ArmatureGroup({ seen, geometry, vocabulary, send }: GroupProps) {
  const bar = term('bar', vocabulary);
  const held = seen.hands.some((hand) => hand.holds === 'armature');
  const turn = (byDeg: number) => send({ type: 'armature.turn', byDeg });
  const barDeg = 360 / geometry.bars;
  return (
    <Group title="Armature" state={`${stateWords(seen, held)}${PART_HEAT[seen.partHeat]}`}>
      <div class="acts">
        {seen.cradle === 'empty' ? (
          <Button onPress={() => send({ type: 'armature.place' })}>Lay it in the cradle</Button>
        ) : (
          <Button onPress={() => send({ type: 'armature.lift' })}>Lift it out</Button>
        )}
        <Button
          pressed={held}
          keyHint="G"
          label={held ? 'Let go of the armature' : 'Take hold of the armature'}
          onPress={() => send({ type: held ? 'armature.release' : 'armature.hold' })}
        >
          {held ? 'Let go' : 'Take hold'}
        </Button>
      </div>
      <Acts name="Turn the armature">
        <Button label={`1 ${bar} away: top away from you`} keyHint="←" onPress={() => turn(-barDeg)}>
          1 {bar} away
        </Button>
        <Button label={`1 ${bar} towards: top towards you`} keyHint="→" onPress={() => turn(barDeg)}>
          1 {bar} towards
        </Button>
        <Button label="5° away: top away from you" keyHint="⇧←" onPress={() => turn(-5)}>
          5° away
        </Button>
        <Button label="5° towards: top towards you" keyHint="⇧→" onPress={() => turn(5)}>
          5° towards
        </Button>
      </Acts>
    </Group>
  );
}

function stateWords(seen: Observation, held: boolean): string {
  if (seen.cradle === 'empty') return 'On the mat; the cradle is empty.';
  return held ? 'In the cradle, a hand on it.' : 'In the cradle.';
}
