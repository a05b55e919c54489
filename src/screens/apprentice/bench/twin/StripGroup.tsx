import { useState } from 'preact/hooks';
import { STRIP_ARC_DEG } from '../../../../bench/geometry.ts';
import { angleWords } from '../../../../bench/placeWords.ts';
import { STRIP_STEP_DEG, USUAL_STRIP_MM } from '../../../../bench/touchables.ts';
import { stripWords } from '../../../../bench/words.ts';
import { Button } from '../../../shared/Button.tsx';
import { SliderField } from '../../../shared/Field.tsx';
import { Group } from './Group.tsx';
import type { GroupProps } from './groups.ts';

const TOP_DEG = (STRIP_ARC_DEG.from + STRIP_ARC_DEG.to) / 2;
/** Greatest height the sliders offer, mm; further away nothing is felt. */
const HIGHEST_MM = 10;

export function StripGroup({ seen, send }: GroupProps) {
  const { strip } = seen;
  const [angle, setAngle] = useState(TOP_DEG);
  const [height, setHeight] = useState(USUAL_STRIP_MM);
  const angleDeg = strip.angleDeg ?? angle;
  const heightMm = strip.heightMm ?? height;
  const hold = (to: number, up: number) => {
    setAngle(to);
    setHeight(up);
    if (strip.at === 'core') send({ type: 'strip.hold', angleDeg: to, heightMm: up });
  };
  return (
    <Group title="Steel strip" state={stripWords(strip) || 'On the rail.'}>
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
            label="Held"
            value={angleDeg}
            min={STRIP_ARC_DEG.from}
            max={STRIP_ARC_DEG.to}
            step={STRIP_STEP_DEG}
            words={angleWords(angleDeg)}
            onInput={(to) => hold(to, heightMm)}
          />
          <SliderField
            label="Height above the core"
            value={heightMm}
            min={USUAL_STRIP_MM}
            max={HIGHEST_MM}
            step={0.5}
            words={`${heightMm} mm`}
            onInput={(up) => hold(angleDeg, up)}
          />
        </>
      )}
    </Group>
  );
}
