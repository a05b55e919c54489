import { effectsOf } from './effects.ts';
import type { Question, Reply } from './solving.ts';

addEventListener('message', ({ data }: MessageEvent<Question>) => {
  postMessage(answer(data));
});

function answer({ nth, scenario, design }: Question): Reply {
  try {
    return { nth, effects: effectsOf(scenario, design) };
  } catch (error) {
    return { nth, failed: String(error) };
  }
}
