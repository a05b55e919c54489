import { run } from './support/command.ts';
import { key } from './support/key.ts';

run(key);
