import { calibrate } from './calibrate/calibrate.ts';

process.exitCode = calibrate(process.argv.slice(2), (line) => console.log(line));
