import { run } from './support/command.ts';
import { validate } from './support/validate.ts';

run(validate);
