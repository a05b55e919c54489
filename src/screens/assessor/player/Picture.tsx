import { useEffect, useRef } from 'preact/hooks';
import type { Job } from '../../../scenario/public/job.ts';
import { isStill } from '../../shared/still.ts';
import type { AssessorPageProps } from '../AssessorScreens.tsx';
import type { Player } from './player.ts';

export interface PictureProps extends AssessorPageProps {
  readonly job: Job;
  readonly player: Player;
}

/** The bench as the learner had it, drawn by the same scene; what it shows stands in words beside it. */
export function Picture({ job, player, desk, settings }: PictureProps) {
  const host = useRef<HTMLDivElement>(null);
  const still = isStill(settings);
  const { vocabulary } = settings;
  useEffect(() => {
    if (host.current === null) return;
    return desk.mountReplay(job, host.current, player.port, { vocabulary, still });
  }, [desk, job, player, vocabulary, still]);
  return <div ref={host} class="as-picture" aria-hidden="true" />;
}
