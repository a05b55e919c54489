import { run } from './support/command.ts';
import { writeMatrix } from './support/writeMatrix.ts';

await run(writeMatrix);
