import { RANGES_A, type Selector } from '../../../../bench/action.ts';
import type { Observation } from '../../../../bench/observation.ts';
import { Acts } from '../../../shared/Acts.tsx';
import { Button } from '../../../shared/Button.tsx';
import { Group } from './Group.tsx';
import type { GroupProps } from './groups.ts';

const SELECTOR_WORDS: Readonly<Record<Selector, string>> = { off: 'Off', low: 'Low', high: 'High' };
const SUPPLY_WORDS: Readonly<Record<Observation['supply'], string>> = {
  off: 'pilot light out',
  on: 'pilot light on',
  cutOut: 'cut-out flag up: too hot, no supply',
  isolated: 'isolated: the attempt is stopped',
};

export function SupplyGroup({ seen, send }: GroupProps) {
  return (
    <Group title="Supply" state={`Selector ${seen.selector}; ${SUPPLY_WORDS[seen.supply]}.`}>
      <Acts name="Selector">
        {(['off', 'low', 'high'] as const).map((to) => (
          <Button
            key={to}
            pressed={seen.selector === to}
            keyHint={to.charAt(0).toUpperCase()}
            label={`Selector ${to}`}
            onPress={() => send({ type: 'selector.turn', to })}
          >
            {SELECTOR_WORDS[to]}
          </Button>
        ))}
      </Acts>
      <Acts name="Ammeter range">
        {RANGES_A.map((to) => (
          <Button
            key={to}
            pressed={seen.rangeA === to}
            label={`${to} A ammeter range`}
            onPress={() => send({ type: 'range.turn', to })}
          >
            {to} A
          </Button>
        ))}
      </Acts>
    </Group>
  );
}
