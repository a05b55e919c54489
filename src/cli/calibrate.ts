import { askedBy, calibrateAll, calibrateOne, USAGE } from './calibrate/command.ts';
import { issueLines, readLibrary } from './support/files.ts';

const words = process.argv.slice(2);
const library = readLibrary();
const asked = askedBy(words);
if (!library.ok) {
  for (const line of issueLines('scenarios', library.issues)) console.error(line);
  process.exitCode = 1;
} else if (words[0] === 'world' && process.send) {
  calibrateOne(library.value, words.slice(1));
} else if (asked === null) {
  console.error(USAGE);
  process.exitCode = 2;
} else {
  process.exitCode = await calibrateAll(library.value, asked, (line) => console.log(line));
}
