import { run } from './support/command.ts';
import { replayAttempt } from './support/replay.ts';

run(replayAttempt);
