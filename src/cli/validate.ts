import { run } from './support/command.ts';
import { validate } from './support/validate.ts';

await run(validate);
