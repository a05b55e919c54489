import { useEffect, useRef, useState } from 'preact/hooks';
import type { Observation } from '../../../bench/observation.ts';
import { ALL_LEADS, type LeadId } from '../../../bench/places.ts';

export interface LeadInUse {
  readonly inUse: LeadId | null;
  readonly choose: (lead: LeadId) => void;
}

/** The lead the tip keys move: the one taken last, or the one chosen, for as long as it is in a hand. */
export function useLeadInUse(seen: Observation): LeadInUse {
  const [chosen, setChosen] = useState<LeadId | null>(null);
  const held = ALL_LEADS.filter((lead) => seen.leads[lead].at === 'hand');
  const before = useRef(held);
  useEffect(() => {
    const taken = held.find((lead) => !before.current.includes(lead));
    before.current = held;
    if (taken) setChosen(taken);
  }, [held.join()]);
  const inUse = chosen !== null && held.includes(chosen) ? chosen : (held[0] ?? null);
  return { inUse, choose: setChosen };
}
