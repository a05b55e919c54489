/** Plain 16-bit mono sound files (RIFF WAVE, format 1). */

export interface Pcm {
  readonly rateHz: number;
  /** Samples in -1..1. */
  readonly samples: Float64Array;
}

export function encodeWav({ rateHz, samples }: Pcm): Uint8Array {
  const bytes = new Uint8Array(44 + 2 * samples.length);
  const view = new DataView(bytes.buffer);
  const text = (at: number, word: string) =>
    bytes.set(
      [...word].map((c) => c.charCodeAt(0)),
      at,
    );
  text(0, 'RIFF');
  view.setUint32(4, 36 + 2 * samples.length, true);
  text(8, 'WAVEfmt ');
  view.setUint32(16, 16, true);
  view.setUint16(20, 1, true);
  view.setUint16(22, 1, true);
  view.setUint32(24, rateHz, true);
  view.setUint32(28, 2 * rateHz, true);
  view.setUint16(32, 2, true);
  view.setUint16(34, 16, true);
  text(36, 'data');
  view.setUint32(40, 2 * samples.length, true);
  samples.forEach((x, i) => {
    view.setInt16(44 + 2 * i, Math.round(32767 * Math.min(1, Math.max(-1, x))), true);
  });
  return bytes;
}

/** Reads what `encodeWav` writes; throws on anything else. */
export function decodeWav(bytes: Uint8Array): Pcm {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const word = (at: number) => String.fromCharCode(...bytes.subarray(at, at + 4));
  if (word(0) !== 'RIFF' || word(8) !== 'WAVE' || view.getUint16(34, true) !== 16) {
    throw new Error('Not a 16-bit RIFF WAVE file.');
  }
  const count = view.getUint32(40, true) / 2;
  const samples = Float64Array.from({ length: count }, (_, i) => view.getInt16(44 + 2 * i, true) / 32767);
  return { rateHz: view.getUint32(24, true), samples };
}
