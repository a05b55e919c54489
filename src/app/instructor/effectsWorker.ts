import { answerInWorker } from '../offThread.ts';
import { effectsOf } from './effects.ts';
import type { Question } from './solving.ts';

answerInWorker(({ scenario, design }: Question) => effectsOf(scenario, design));
