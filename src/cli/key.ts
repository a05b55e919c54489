import { run } from './support/command.ts';
import { key } from './support/key.ts';

await run(key);
