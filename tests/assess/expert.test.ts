import { describe, expect, it } from 'vitest';
import { assess } from '../../src/assess/assess.ts';
import { parseScenarioText } from '../../src/scenario/parse.ts';
import { scenarioTexts } from '../scenario/files.ts';
import { expertAttempt, library } from './attempts.ts';

describe('the expert, from observations alone', () => {
  it.each([...scenarioTexts()])('wins every mark of %s', (_name, text) => {
    const scenario = parseScenarioText(text, library);
    if (!scenario.ok) throw new Error(JSON.stringify(scenario.issues));
    const { attempt, verdict } = expertAttempt(scenario.value);
    const { marks, stoppedBy } = assess(attempt, library);
    expect({ verdict, lost: marks.filter(({ earned, of }) => earned < of), stoppedBy }).toEqual({
      verdict,
      lost: [],
      stoppedBy: null,
    });
  });
});
