import { useRef } from 'preact/hooks';
import type { Vocabulary } from '../shared/words.ts';
import type { PartType } from './desk.ts';
import { moved, outlineOf, RADII, sectorOf } from './ring.ts';
import { spotWords } from './say.ts';
import { RINGS, type Spot, sameSpot, spotsIn } from './spots.ts';

export interface EndViewProps {
  readonly part: PartType;
  readonly chosen: Spot;
  /** Places that hold a fault now. */
  readonly faulty: readonly Spot[];
  readonly vocabulary: Vocabulary;
  readonly onChoose: (spot: Spot) => void;
}

const STEPS: Readonly<Record<string, readonly [round: number, out: number]>> = {
  ArrowRight: [1, 0],
  ArrowLeft: [-1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

/**
 * The part lying open, seen from the commutator end: every place a fault can live is a button. One stop for the tab
 * key; arrows go round a ring, and from ring to ring.
 */
export function EndView({ part, chosen, faulty, vocabulary, onChoose }: EndViewProps) {
  const picture = useRef<SVGSVGElement>(null);
  const onKeyDown = (event: KeyboardEvent) => {
    const step = STEPS[event.key];
    if (step === undefined) return;
    event.preventDefault();
    const next = moved(chosen, step[0], step[1], part);
    onChoose(next);
    picture.current?.querySelector<SVGElement>(`[data-spot="${next.ring}:${next.n}"]`)?.focus();
  };
  return (
    // biome-ignore lint/a11y/useSemanticElements: a picture is no fieldset.
    <svg
      ref={picture}
      class="in-end"
      viewBox="-100 -100 200 200"
      role="group"
      aria-label="The part lying open, seen from the commutator end"
      onKeyDown={onKeyDown}
    >
      <circle class="in-core" r="96" />
      <circle class="in-iron" r="86" />
      <circle class="in-well" r="52" />
      {RINGS.flatMap((ring) =>
        Array.from({ length: spotsIn(ring, part) }, (_, n) => {
          const spot = { ring, n };
          return (
            <SpotButton
              key={`${ring}:${n}`}
              {...{ spot, part, vocabulary, onChoose }}
              chosen={sameSpot(spot, chosen)}
              faulty={faulty.some((one) => sameSpot(one, spot))}
            />
          );
        }),
      )}
    </svg>
  );
}

interface SpotButtonProps {
  readonly spot: Spot;
  readonly part: PartType;
  readonly chosen: boolean;
  readonly faulty: boolean;
  readonly vocabulary: Vocabulary;
  readonly onChoose: (spot: Spot) => void;
}

function SpotButton({ spot, part, chosen, faulty, vocabulary, onChoose }: SpotButtonProps) {
  const name = spotWords(spot, part.view.bars, vocabulary);
  return (
    // biome-ignore lint/a11y/useSemanticElements: a shape inside a picture cannot be an HTML button.
    <g
      role="button"
      tabindex={chosen ? 0 : -1}
      class={`in-spot in-spot-${spot.ring}`}
      data-spot={`${spot.ring}:${spot.n}`}
      aria-pressed={chosen}
      aria-label={faulty ? `${name}, faulty` : name}
      onClick={() => onChoose(spot)}
      onKeyDown={(event) => {
        if (event.key !== 'Enter' && event.key !== ' ') return;
        event.preventDefault();
        onChoose(spot);
      }}
    >
      <path d={outlineOf(spot, part)} fill-rule="evenodd" />
      {faulty ? <Cross spot={spot} part={part} /> : null}
    </g>
  );
}

/** A fault is marked by a sign as well as by colour. */
function Cross({ spot, part }: { readonly spot: Spot; readonly part: PartType }) {
  const [inner, outer] = RADII[spot.ring];
  const middle = spot.ring === 'surface' ? 0 : (inner + outer) / 2;
  const rad = (sectorOf(spot, part).mid * Math.PI) / 180;
  const at = `translate(${(middle * Math.sin(rad)).toFixed(2)} ${(middle * Math.cos(rad)).toFixed(2)})`;
  return <path class="in-cross" transform={at} d="M-3 -3L3 3M-3 3L3 -3" />;
}
