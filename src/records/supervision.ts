import type { EvidenceItem } from './record.ts';

/**
 * What a record says of an assessed attempt whose bench ran in the learner's own browser, and with it the fault. Every
 * bench does so today; guided and practice attempts need no supervision.
 * @returns null where nothing of the kind is to be said
 */
export function supervisionOf(mode: EvidenceItem['mode'], supervisedBy: string): string | null {
  if (mode !== 'assessed') return null;
  return `The fault was on the learner’s machine; supervised by ${supervisedBy.trim()}.`;
}

/** Evidence with what is to be said of its supervision. */
export function withSupervision(item: EvidenceItem, supervisedBy: string): EvidenceItem {
  const supervision = supervisionOf(item.mode, supervisedBy);
  return supervision === null ? item : { ...item, supervision };
}
