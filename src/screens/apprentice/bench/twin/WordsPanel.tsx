import { ALL_LEADS, type LeadId } from '../../../../bench/places.ts';
import { ArmatureGroup } from './ArmatureGroup.tsx';
import type { GroupProps } from './groups.ts';
import { LeadGroup } from './LeadGroup.tsx';
import { LookGroup } from './LookGroup.tsx';
import { FoldedGroups, MatGroups, RailGroups } from './MoreGroups.tsx';
import { StripGroup } from './StripGroup.tsx';
import { SupplyGroup } from './SupplyGroup.tsx';

export interface WordsPanelProps extends GroupProps {
  readonly lead: LeadId | null;
}

/** The whole bench in words and buttons: everything a hand can do on the picture can be done here. */
export function WordsPanel({ lead, ...group }: WordsPanelProps) {
  return (
    <div class="groups">
      <SupplyGroup {...group} />
      <ArmatureGroup {...group} />
      <MatGroups {...group} />
      {ALL_LEADS.filter((id) => group.seen.leads[id].at !== 'absent').map((id) => (
        <LeadGroup key={id} {...group} lead={id} inUse={id === lead} />
      ))}
      <StripGroup {...group} />
      <LookGroup {...group} />
      <RailGroups {...group} />
      <FoldedGroups {...group} />
    </div>
  );
}
