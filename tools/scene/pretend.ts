import type { Action } from '../../src/bench/action.ts';
import { barAngleDeg } from '../../src/bench/geometry.ts';
import type { LeadView, Observation } from '../../src/bench/observation.ts';
import { barOf, type LeadId } from '../../src/bench/places.ts';
import type { ArmatureView } from '../../src/scenario/public/job.ts';

/** What the harness's make-believe bench shows after an action: moves things, computes nothing. */
export function pretend(seen: Observation, action: Action, part: ArmatureView): Observation {
  switch (action.type) {
    case 'selector.turn':
      return { ...seen, selector: action.to, supply: action.to === 'off' ? 'off' : 'on' };
    case 'range.turn':
      return { ...seen, rangeA: action.to };
    case 'armature.place':
      return { ...seen, cradle: 'armature' };
    case 'armature.lift':
      return { ...seen, cradle: 'empty' };
    case 'armature.turn':
      return {
        ...seen,
        rotationDeg: Math.round(((((seen.rotationDeg + action.byDeg) % 360) + 360) % 360) * 10) / 10,
      };
    case 'strip.take':
    case 'strip.away':
      return { ...seen, strip: { at: 'hand', angleDeg: null, heightMm: null, pull: 0, buzz: 0 } };
    case 'strip.hold':
      return {
        ...seen,
        strip: { at: 'core', angleDeg: action.angleDeg, heightMm: action.heightMm, pull: 0, buzz: 0 },
      };
    case 'strip.hang':
      return { ...seen, strip: { at: 'rail', angleDeg: null, heightMm: null, pull: 0, buzz: 0 } };
    case 'part.takeUp':
      return { ...seen, mat: { ...seen.mat, [action.part]: 'forward' } };
    case 'part.putBack':
      return { ...seen, mat: { ...seen.mat, [action.part]: 'away' } };
    case 'brushes.part':
      return { ...seen, brushesApart: true };
    case 'brushes.join':
      return { ...seen, brushesApart: false };
    case 'lens.look':
      return { ...seen, look: { place: action.place, sees: [] } };
    case 'chalk.mark':
      return { ...seen, chalkedBar: action.bar };
    default:
      return moveLead(seen, action, part);
  }
}

function moveLead(seen: Observation, action: Action, part: ArmatureView): Observation {
  const put = (lead: LeadId, view: Partial<LeadView>): Observation => ({
    ...seen,
    leads: { ...seen.leads, [lead]: { ...seen.leads[lead], ...view } },
  });
  if (action.type === 'lead.take') {
    return put(action.lead, { at: 'hand', grip: action.grip, touches: null, stationDeg: null });
  }
  if (action.type === 'lead.lift') return put(action.lead, { touches: null, stationDeg: null });
  if (action.type === 'lead.lean') return put(action.lead, { leaning: action.on });
  if (action.type === 'lead.clamp') return put(action.lead, { at: 'stand', grip: null });
  if (action.type === 'lead.holster') {
    return put(action.lead, { at: 'holster', grip: null, touches: null, stationDeg: null });
  }
  if (action.type !== 'lead.touch') return seen;
  const bar = barOf(action.place);
  const stationDeg = bar === null ? null : barAngleDeg(part, bar, seen.rotationDeg);
  return put(action.lead, { touches: action.place, stationDeg });
}
