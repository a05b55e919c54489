import { run } from './support/command.ts';
import { writeMatrix } from './support/writeMatrix.ts';

run(writeMatrix);
