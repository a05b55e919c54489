export { createEvidence, type EvidenceInput, type EvidenceModel } from './model.ts';
export type { Posterior } from './posterior.ts';
export type { LampReading, LookReading, MeterReading, Reading, StripReading } from './reading.ts';
export { Weigher } from './weigher.ts';
