import { answerInWorker } from '../offThread.ts';
import { readingsNeeded } from './counting.ts';

answerInWorker(readingsNeeded);
