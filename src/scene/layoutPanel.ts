import type { LayoutMode, PanelLayout, Rect } from './layout.ts';
import { whole } from './wholePixels.ts';

type Four<T> = readonly [T, T, T, T];

function four<T>(make: (i: number) => T): Four<T> {
  return [make(0), make(1), make(2), make(3)];
}

/**
 * Switch and flags at the left hand, the two instruments side by side, all four leads under the commutator: what is
 * read stands together, what is reached for stands where it is used.
 */
function inOneRow(frame: Rect, compact: boolean): PanelLayout {
  const pad = compact ? 8 : 14;
  const y = frame.y + pad + 4;
  const h = frame.h - pad * 2 - 2;
  const pocket = Math.max(40, frame.w * 0.054);
  const gap = compact ? 8 : 16;
  const holstersX = frame.x + frame.w - pad - pocket * 4 - gap;
  const rest = holstersX - frame.x - pad - gap * 3;
  const selector = { x: frame.x + pad, y, w: rest * 0.25, h };
  const flags = { x: selector.x + selector.w + 4, y, w: rest * 0.11, h };
  const meter = { x: flags.x + flags.w + gap, y, w: Math.min(h * 1.5, rest * 0.39), h };
  const plateX = meter.x + meter.w + 4;
  const plateW = rest * 0.09;
  const lampX = plateX + plateW + gap;
  return {
    frame,
    selector,
    flags,
    meter,
    ranges: four((i) => ({ x: plateX, y: y + (i * h) / 4, w: plateW, h: h / 4 - 3 })),
    lamp: { x: lampX, y, w: holstersX - gap - lampX, h },
    holsters: four((i) => ({ x: holstersX + i * pocket + (i > 1 ? gap : 0), y, w: pocket, h })),
  };
}

/** Two rows for a phone held upright: switch, flags and lamp above; meter, ranges and leads below. */
function inTwoRows(frame: Rect): PanelLayout {
  const pad = 6;
  const topH = frame.h * 0.42;
  const y2 = frame.y + topH + pad;
  const h2 = frame.h - topH - pad * 2;
  const meterW = frame.w * 0.5 - pad * 1.5;
  const plates = 44;
  const holstersX = frame.x + meterW + pad * 2;
  const pocket = (frame.w - meterW - pad * 3) / 4;
  const top = { y: frame.y + pad + 4, h: topH - pad - 4 };
  const tenth = (frame.w - pad * 2) / 10;
  return {
    frame,
    selector: { x: frame.x + pad, w: tenth * 4.4, ...top },
    flags: { x: frame.x + pad + tenth * 4.5, w: tenth * 2, ...top },
    lamp: { x: frame.x + pad + tenth * 6.7, w: tenth * 3.3, ...top },
    meter: { x: frame.x + pad, y: y2, w: meterW, h: h2 - plates - 2 },
    ranges: four((i) => ({
      x: frame.x + pad + (i * meterW) / 4,
      y: y2 + h2 - plates,
      w: meterW / 4 - 3,
      h: plates,
    })),
    holsters: four((i) => ({ x: holstersX + i * pocket, y: y2, w: pocket, h: h2 })),
  };
}

/** Everything on the panel stands on whole px: a picture between two px is drawn slowly, and its letters blur. */
export function placePanel(frame: Rect, mode: LayoutMode): PanelLayout {
  const placed = mode === 'narrow' ? inTwoRows(frame) : inOneRow(frame, mode === 'medium');
  const [ranges, holsters] = [placed.ranges, placed.holsters].map((row) => four((i) => whole(row[i]!)));
  return {
    frame,
    selector: whole(placed.selector),
    flags: whole(placed.flags),
    meter: whole(placed.meter),
    ranges: ranges!,
    lamp: whole(placed.lamp),
    holsters: holsters!,
  };
}
