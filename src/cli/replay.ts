import { run } from './support/command.ts';
import { replayFile } from './support/replay.ts';

await run(replayFile);
