import { useState } from 'preact/hooks';
import { STRIP_ARC_DEG } from '../../../../bench/geometry.ts';
import type { StripView } from '../../../../bench/observation.ts';
import { Button } from '../../../shared/Button.tsx';
import { SliderField } from '../../../shared/Field.tsx';
import { STRIP_HEIGHT_MM } from '../keys.ts';
import { Group } from './Group.tsx';
import type { GroupProps } from './groups.ts';

const PULL_WORDS = [
  'no pull',
  'a pull just felt',
  'a plain pull',
  'a strong pull',
  'snapped on to the iron',
] as const;

export function StripGroup({ seen, send }: GroupProps) {
  const { strip } = seen;
  const [angleDeg, setAngle] = useState(strip.angleDeg ?? 180);
  const [heightMm, setHeight] = useState(strip.heightMm ?? STRIP_HEIGHT_MM);
  const hold = (angle: number, height: number) => {
    setAngle(angle);
    setHeight(height);
    if (strip.at === 'core') send({ type: 'strip.hold', angleDeg: angle, heightMm: height });
  };
  return (
    <Group title="Steel strip" state={stripState(strip)}>
      <div class="acts">
        <Button keyHint="X" onPress={() => send({ type: strip.at === 'rail' ? 'strip.take' : 'strip.hang' })}>
          {strip.at === 'rail' ? 'Take the strip' : 'Hang it up'}
        </Button>
        {strip.at === 'hand' ? (
          <Button onPress={() => send({ type: 'strip.hold', angleDeg, heightMm })}>
            Hold it over the core
          </Button>
        ) : null}
        {strip.at === 'core' ? (
          <Button onPress={() => send({ type: 'strip.away' })}>Take it away</Button>
        ) : null}
      </div>
      {strip.at === 'rail' ? null : (
        <>
          <SliderField
            label="Held at, degrees round from the bottom"
            value={angleDeg}
            min={STRIP_ARC_DEG.from}
            max={STRIP_ARC_DEG.to}
            step={5}
            words={angleWords(angleDeg)}
            onInput={(angle) => hold(angle, heightMm)}
          />
          <SliderField
            label="Height above the iron"
            value={heightMm}
            min={0.5}
            max={10}
            step={0.5}
            words={`${heightMm} mm`}
            onInput={(height) => hold(angleDeg, height)}
          />
        </>
      )}
    </Group>
  );
}

function stripState(strip: StripView): string {
  if (strip.at === 'rail') return 'On the rail.';
  if (strip.at === 'hand') return 'In the hand, away from the core.';
  const buzz = strip.buzz === 0 ? 'still' : strip.buzz <= 3 ? 'buzzing faintly' : 'buzzing hard';
  return `Over the core at ${angleWords(strip.angleDeg ?? 180)}: ${PULL_WORDS[strip.pull] ?? 'a pull'}, ${buzz}.`;
}

/** An angle round the upper arc as a person in front would say it. */
function angleWords(angleDeg: number): string {
  const off = Math.round(angleDeg - 180);
  if (off === 0) return 'the top';
  return `${Math.abs(off)}° from the top, ${off < 0 ? 'far side' : 'your side'}`;
}
