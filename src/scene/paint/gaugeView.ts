import type { GaugeView } from '../../bench/observation.ts';
import { brushWords } from '../../bench/toolWords.ts';
import type { PaintCloseUp } from '../closeUp.ts';
import { type Dialled, dialFor, handAngle, type Ruled, ruledFor } from '../gaugeShape.ts';
import { COPPER, font, INK, MICA, PAPER, STEEL } from '../materials.ts';
import { disc, linear, type Pen, roundRect } from '../pen.ts';
import { paintCaption } from './caption.ts';
import { paintRound } from './round.ts';

/** A gauge at rest on the part, seen large. What it shows is what an eye reads off it, and drives the whole picture. */
export const paintGauge: PaintCloseUp<GaugeView> = (pen, r, view, say) => {
  paintRound(pen, r, { ...STEEL, light: STEEL.shine }, 6, () => {
    pen.fillStyle = linear(pen, 0, -r, 0, r, [
      [0, '#1d4047'],
      [1, '#0a1f24'],
    ]);
    pen.fillRect(-r, -r, r * 2, r * 2);
    if (view.gauge === 'brushLength') paintBrushOnRule(pen, r, view.mm, say !== null);
    else {
      PUT_TO[view.gauge](pen, r, view.mm, say !== null);
      paintDial(pen, r, view.gauge, view.mm, say !== null);
    }
  });
  if (say !== null) paintCaption(pen, r, say(shownWords(view)));
};

function shownWords({ gauge, brush, mm }: GaugeView): string {
  switch (gauge) {
    case 'diameter':
      return `${mm} mm across`;
    case 'runOut':
      return `runs out by ${mm} mm`;
    case 'undercut':
      return `mica ${mm} mm below`;
    case 'brushLength':
      return `${brushWords(brush ?? 0).replace(/^the /, '')}: ${mm} mm`;
  }
}

const PUT_TO: Readonly<Record<Dialled, (pen: Pen, r: number, mm: number, figures: boolean) => void>> = {
  diameter: paintCalliper,
  runOut: paintPlunger,
  undercut: paintDepthBlade,
};

function paintDial(pen: Pen, r: number, gauge: Dialled, mm: number, figures: boolean): void {
  const dial = dialFor(gauge, mm);
  const radius = r * 0.52;
  pen.save();
  pen.translate(0, -r * 0.38);
  disc(pen, 0, 0, radius + 3, STEEL.mid);
  disc(pen, 0, 0, radius, PAPER);
  const strokes = Math.round(dial.turnMm / dial.strokeMm);
  const perFigure = strokes / dial.figures.length;
  for (let i = 0; i < strokes; i++) {
    // Strokes closer than an eye can part are left to it to halve.
    const fine = i % perFigure !== 0;
    if (fine && strokes > 60 && i % 2 === 1) continue;
    stroke(pen, (2 * Math.PI * i) / strokes, radius * (fine ? 0.88 : 0.78), radius * 0.97, fine ? 0.7 : 1.6);
  }
  pen.fillStyle = INK;
  pen.font = font(Math.max(8, radius * 0.27), 650);
  pen.textAlign = 'center';
  pen.textBaseline = 'middle';
  if (figures)
    dial.figures.forEach((figure, i) => {
      const angle = (2 * Math.PI * i) / dial.figures.length;
      pen.fillText(figure, Math.sin(angle) * radius * 0.58, -Math.cos(angle) * radius * 0.58);
    });
  paintHand(pen, handAngle(dial, mm), radius);
  pen.restore();
}

function stroke(pen: Pen, angle: number, from: number, to: number, width: number): void {
  const [dx, dy] = [Math.sin(angle), -Math.cos(angle)];
  pen.strokeStyle = INK;
  pen.lineWidth = width;
  pen.beginPath();
  pen.moveTo(dx * from, dy * from);
  pen.lineTo(dx * to, dy * to);
  pen.stroke();
}

function paintHand(pen: Pen, angle: number, radius: number): void {
  pen.save();
  pen.rotate(angle);
  pen.fillStyle = '#8f2417';
  pen.beginPath();
  pen.moveTo(-radius * 0.05, radius * 0.18);
  pen.lineTo(radius * 0.05, radius * 0.18);
  pen.lineTo(0.6, -radius * 0.92);
  pen.lineTo(-0.6, -radius * 0.92);
  pen.closePath();
  pen.fill();
  pen.restore();
  disc(pen, 0, 0, radius * 0.09, INK);
}

/** Strokes and figures of a straight scale from (0, 0) to the right, below the line. */
function paintRuled(pen: Pen, ruled: Ruled, pxPerMm: number, size: number, figures: boolean): void {
  const { spanMm, strokeMm, figureMm } = ruled;
  pen.fillStyle = INK;
  pen.font = font(Math.max(8, size), 650);
  pen.textAlign = 'center';
  pen.textBaseline = 'top';
  for (let i = 0; i * strokeMm <= spanMm; i++) {
    const mm = i * strokeMm;
    const long = mm % figureMm === 0;
    pen.fillRect(mm * pxPerMm - 0.5, 0, 1, size * (long ? 0.8 : 0.45));
    if (long && figures) pen.fillText(String(mm), mm * pxPerMm, size * 0.85);
  }
}

/** Calliper with the commutator, end on, between its jaws. */
function paintCalliper(pen: Pen, r: number, mm: number, figures: boolean): void {
  const ruled = ruledFor(mm);
  const pxPerMm = (r * 1.44) / ruled.spanMm;
  const left = -r * 0.72;
  const beam = r * 0.16;
  const jaw = (x: number, width: number) => {
    pen.fillStyle = STEEL.light;
    pen.fillRect(x, beam, width, r * 0.62);
  };
  const radius = (mm / 2) * pxPerMm;
  paintCommutatorEnd(pen, left + radius, r * 0.74, radius);
  jaw(left - r * 0.14, r * 0.14);
  jaw(left + mm * pxPerMm, r * 0.14);
  roundRect(pen, left - r * 0.14, beam, r * 1.72, r * 0.26, 2);
  pen.fillStyle = STEEL.shine;
  pen.fill();
  pen.save();
  pen.translate(left, beam);
  paintRuled(pen, ruled, pxPerMm, r * 0.13, figures);
  pen.restore();
}

/** End of a commutator: bars of copper round a hub. The count is the picture's, not the part's. */
function paintCommutatorEnd(pen: Pen, x: number, y: number, radius: number): void {
  disc(pen, x, y, radius, MICA);
  const bars = 24;
  for (let i = 0; i < bars; i++) {
    const from = (2 * Math.PI * (i + 0.08)) / bars;
    pen.beginPath();
    pen.moveTo(x, y);
    pen.arc(x, y, radius, from, from + (2 * Math.PI * 0.84) / bars);
    pen.closePath();
    pen.fillStyle = i % 2 ? COPPER.mid : '#c47a44';
    pen.fill();
  }
  disc(pen, x, y, radius * 0.5, '#2a2018');
}

/** Plunger of a dial gauge on the turning surface. */
function paintPlunger(pen: Pen, r: number): void {
  paintCommutatorEnd(pen, 0, r * 1.62, r * 1.02);
  pen.fillStyle = STEEL.mid;
  pen.fillRect(-r * 0.09, r * 0.1, r * 0.18, r * 0.28);
  pen.fillStyle = STEEL.light;
  pen.fillRect(-r * 0.045, r * 0.36, r * 0.09, r * 0.2);
  disc(pen, 0, r * 0.56, r * 0.05, STEEL.shine);
}

/** Foot of a depth gauge across two bars, its blade down on the mica. */
function paintDepthBlade(pen: Pen, r: number, mm: number): void {
  const top = r * 0.4;
  const half = r * 0.13;
  // Drawn large: a tenth of a mm must be seen.
  const depth = Math.min(r * 0.5, mm * r * 0.36);
  pen.fillStyle = linear(pen, 0, top, 0, r, [
    [0, COPPER.light],
    [1, COPPER.dark],
  ]);
  pen.fillRect(-r, top, r - half, r);
  pen.fillRect(half, top, r, r);
  pen.fillStyle = '#6d5334';
  pen.fillRect(-half, top + depth, half * 2, r);
  pen.fillStyle = STEEL.light;
  pen.fillRect(-r * 0.42, top - r * 0.15, r * 0.84, r * 0.15);
  pen.fillRect(-half * 0.5, top - r * 0.3, half, r * 0.3 + depth);
}

/** A brush laid to a rule, its running face at nought. */
function paintBrushOnRule(pen: Pen, r: number, mm: number, figures: boolean): void {
  const ruled = ruledFor(mm);
  const pxPerMm = (r * 1.5) / ruled.spanMm;
  const left = -r * 0.75;
  pen.strokeStyle = COPPER.mid;
  pen.lineWidth = r * 0.09;
  pen.lineCap = 'round';
  pen.beginPath();
  pen.moveTo(left + mm * pxPerMm - r * 0.06, -r * 0.22);
  pen.quadraticCurveTo(left + mm * pxPerMm + r * 0.3, -r * 0.3, r * 0.9, -r * 0.7);
  pen.stroke();
  pen.fillStyle = linear(pen, 0, -r * 0.46, 0, r * 0.04, [
    [0, '#6a6f72'],
    [0.3, '#45494c'],
    [1, '#222527'],
  ]);
  pen.fillRect(left, -r * 0.46, mm * pxPerMm, r * 0.5);
  roundRect(pen, left - r * 0.1, r * 0.06, r * 1.72, r * 0.4, 2);
  pen.fillStyle = STEEL.shine;
  pen.fill();
  pen.save();
  pen.translate(left, r * 0.06);
  paintRuled(pen, ruled, pxPerMm, r * 0.17, figures);
  pen.restore();
}
