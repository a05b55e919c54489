import { answerInWorker } from '../offThread.ts';
import { answer } from './answers.ts';

answerInWorker(answer);
