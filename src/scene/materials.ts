/** Colours of the workshop at dusk, as CSS strings for painting and numbers for tints. */
export const INK = '#1b2a2e';
export const PAPER = '#f2ead7';
export const PAPER_SHADE = '#d9cdb2';
export const CHALK = '#f7f6ee';

export const WALL = { top: '#14252c', low: '#1b363d', rail: '#0d1a1f' } as const;
export const BENCH = { far: '#0d3c42', near: '#0f4c50', glow: '#2b7d79', edge: '#08262a' } as const;
export const APRON = { top: '#2c454c', face: '#203840', low: '#16282e', line: '#4c6a70' } as const;

export const STEEL = { dark: '#3f4a4e', mid: '#8b979b', light: '#c9d3d4', shine: '#f2f7f6' } as const;
export const IRON = { dark: '#23303a', mid: '#3d4f59', light: '#64798a' } as const;
export const COPPER = { dark: '#5b2c14', mid: '#b4662f', light: '#e39a5c', shine: '#ffd9a8' } as const;
export const ENAMEL = { dark: '#4b1f12', mid: '#8f4420', light: '#cf7d42' } as const;
export const BRASS = { dark: '#6a4d1b', mid: '#b58d3c', light: '#e9cd84' } as const;
export const MICA = '#20140d';
export const SOLDER = { dark: '#7e868a', light: '#e6ebec' } as const;
export const TAPE = { dark: '#3a3024', mid: '#7c684a', light: '#a8926a' } as const;
export const CORD = { dark: '#6f6246', light: '#cdbf98' } as const;

/** The two lead sets differ by build first; their colours follow. */
export const NEEDLE_LEAD = {
  body: '#23343c',
  trim: '#8fb8c9',
  cable: '#4f7f93',
  cableLight: '#86b3c4',
} as const;
export const GUARDED_LEAD = {
  body: '#7a1f1d',
  trim: '#e8b23a',
  cable: '#8d2b22',
  cableLight: '#d2604d',
} as const;

export const AIM = 0x8ff0d2;
export const REFUSED = 0xff8f6b;
export const WARN = '#f0a63a';

/** The face the letters of the bench are cut from. */
export const LETTERS = 'Atkinson Hyperlegible Next';
export const FONT = `"${LETTERS}", system-ui, sans-serif`;

export function font(px: number, weight = 600): string {
  return `${weight} ${px}px ${FONT}`;
}
