import { keepOffline } from './offline.ts';

void keepOffline();
