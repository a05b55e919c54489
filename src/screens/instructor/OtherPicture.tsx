import type { FieldFrameView } from '../../scenario/public/job.ts';
import type { Vocabulary } from '../shared/words.ts';
import { HOLDERS, type Other, type OtherSpot, spotsOf } from './matSpots.ts';
import { sectorPath } from './ring.ts';
import { otherSpotWords } from './say.ts';

export interface OtherPictureProps {
  readonly other: Exclude<Other, 'bench'>;
  readonly frame: FieldFrameView | null;
  readonly chosen: OtherSpot;
  /** Places that hold a fault now. */
  readonly faulty: readonly OtherSpot[];
  readonly vocabulary: Vocabulary;
  readonly onChoose: (spot: OtherSpot) => void;
}

interface Shape {
  readonly spot: OtherSpot;
  readonly path: string;
  /** Middle, for the cross of a fault and the number. */
  readonly x: number;
  readonly y: number;
  readonly kind: 'coil' | 'brush' | 'insulated' | 'earthed';
}

const DEG = Math.PI / 180;
const disc = (x: number, y: number, r: number) =>
  `M${x} ${y + r}A${r} ${r} 0 1 0 ${x} ${y - r}A${r} ${r} 0 1 0 ${x} ${y + r}Z`;
const tidy = (value: number) => Number(value.toFixed(2));

/** Coils round the inside of the case, the two field brushes in the middle. */
function frameShapes(frame: FieldFrameView | null): Shape[] {
  const spots = spotsOf('fieldFrame', frame);
  const coils = spots.filter((spot) => spot.startsWith('coil:'));
  return spots.map((spot, nth): Shape => {
    if (spot.startsWith('brush:')) {
      const x = spot === 'brush:1' ? -22 : 22;
      return { spot, path: disc(x, 0, 13), x, y: 0, kind: 'brush' };
    }
    const mid = (360 * nth) / coils.length + 180;
    const [x, y] = [tidy(62 * Math.sin(mid * DEG)), tidy(62 * Math.cos(mid * DEG))];
    return { spot, path: sectorPath([48, 76], mid, 150 / coils.length), x, y, kind: 'coil' };
  });
}

/** Four holders on the plate; the insulated ones lie on their insulators. */
function plateShapes(): Shape[] {
  return HOLDERS.map((spot, nth): Shape => {
    const mid = 45 + 90 * ([0, 2, 1, 3][nth] ?? 0);
    const [x, y] = [tidy(54 * Math.sin(mid * DEG)), tidy(54 * Math.cos(mid * DEG))];
    const kind = spot.startsWith('plate:insulated') ? 'insulated' : 'earthed';
    return { spot, path: `M${x - 17} ${y - 17}h34v34h-34z`, x, y, kind };
  });
}

/** Field frame or brush plate lying open: every place a fault can live is a button. */
export function OtherPicture(props: OtherPictureProps) {
  const { other, frame, chosen, faulty, vocabulary, onChoose } = props;
  const shapes = other === 'fieldFrame' ? frameShapes(frame) : plateShapes();
  return (
    // biome-ignore lint/a11y/useSemanticElements: a picture is no fieldset.
    <svg class="in-end in-other" viewBox="-100 -100 200 200" role="group" aria-label="The part lying open">
      <circle class="in-core" r="96" />
      <circle class="in-iron" r={other === 'fieldFrame' ? 84 : 90} />
      {other === 'fieldFrame' ? <circle class="in-well" r="42" /> : <circle class="in-hole" r="24" />}
      {shapes.map((shape) => (
        <ShapeButton
          key={shape.spot}
          shape={shape}
          name={otherSpotWords(shape.spot, frame, vocabulary)}
          chosen={shape.spot === chosen}
          faulty={faulty.includes(shape.spot)}
          onChoose={onChoose}
        />
      ))}
    </svg>
  );
}

function ShapeButton(props: {
  readonly shape: Shape;
  readonly name: string;
  readonly chosen: boolean;
  readonly faulty: boolean;
  readonly onChoose: (spot: OtherSpot) => void;
}) {
  const { shape, name, chosen, faulty, onChoose } = props;
  return (
    // biome-ignore lint/a11y/useSemanticElements: a shape inside a picture cannot be an HTML button.
    <g
      role="button"
      tabindex={0}
      class={`in-spot in-spot-${shape.kind}`}
      aria-pressed={chosen}
      aria-label={faulty ? `${name}, faulty` : name}
      onClick={() => onChoose(shape.spot)}
      onKeyDown={(event) => {
        if (event.key !== 'Enter' && event.key !== ' ') return;
        event.preventDefault();
        onChoose(shape.spot);
      }}
    >
      <path d={shape.path} />
      <text class="in-number" x={shape.x} y={shape.y + 4}>
        {numberOf(shape.spot)}
      </text>
      {faulty ? (
        <path class="in-cross" transform={`translate(${shape.x} ${shape.y - 10})`} d="M-4 -4L4 4M-4 4L4 -4" />
      ) : null}
    </g>
  );
}

/** Coils are told to people from 1, as on the drawing of the job. */
const numberOf = (spot: OtherSpot) =>
  spot.startsWith('coil:') ? String(Number(spot.slice('coil:'.length)) + 1) : spot.slice(-1);
