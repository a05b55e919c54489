import type { Attempt, Entry } from '../../../attempt/entry.ts';
import type { Breach } from '../../../bench/port.ts';
import { spoken, type Vocabulary } from '../../shared/words.ts';

type Touch = NonNullable<Breach['touch']>;

const EFFECTS: Readonly<Record<Touch['effect'], string>> = {
  notFelt: 'too little to be felt',
  felt: 'felt, up to a hard jolt; a start backwards hurts people too',
  cannotLetGo: 'the muscles cramp: most people cannot let go',
  mayKill: 'the heart can be stopped if the touch lasts',
};

export interface BodyCurrentProps {
  readonly attempt: Attempt;
  readonly vocabulary: Vocabulary;
  readonly onShow: (entries: readonly number[]) => void;
}

/** What would have gone through the body at every touch of live metal; nothing where there was none. */
export function BodyCurrent({ attempt, vocabulary, onShow }: BodyCurrentProps) {
  const touches = attempt.entries.flatMap(touchesOf);
  if (touches.length === 0) return null;
  const floated = touches.every(({ touch }) => touch.effect === 'notFelt' || touch.effect === 'felt');
  return (
    <section class="body-current" aria-labelledby="body-title">
      <h2 id="body-title">What would have gone through you</h2>
      <ul>
        {touches.map(({ n, breach, touch }) => (
          <li key={`${n} ${breach.interlock}`}>
            {spoken(breach.sentence, vocabulary)} <strong>About {milliampere(touch.currentA)}</strong>:{' '}
            {EFFECTS[touch.effect]}.{' '}
            <button type="button" class="entry-link no-print" onClick={() => onShow([n])}>
              show entry {n}
            </button>
          </li>
        ))}
      </ul>
      <p>
        A current of mains frequency is felt from about 0.5 mA. From about 10 mA most adults cannot let go.
        Above about 40 mA the heart can stop if the touch lasts.{' '}
        {floated
          ? spoken(
              'This time the lamp’s winding floated and little could flow. Nobody can see that from outside, and the next bench may have found its way to ground: the mark is lost all the same.',
              vocabulary,
            )
          : 'The lamp in series held it back no more than that.'}
      </p>
      <p class="figures-note">
        Computed for a body of middling impedance, from one hand to {spoken('grounded metal', vocabulary)},
        with the lamp in series. The first limit is that of IEC 60479-1; the other two are as commonly quoted
        from it and were not checked against the standard.
      </p>
    </section>
  );
}

interface Touched {
  readonly n: number;
  readonly breach: Breach;
  readonly touch: Touch;
}

function touchesOf({ n, outcome }: Entry): readonly Touched[] {
  return outcome.breaches.flatMap((breach) => (breach.touch ? [{ n, breach, touch: breach.touch }] : []));
}

/** Two figures are all such an estimate is worth. */
export function milliampere(currentA: number): string {
  return `${Number((currentA * 1000).toPrecision(2))} mA`;
}
