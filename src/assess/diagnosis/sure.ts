import type { ScoringRule } from '../../scenario/public/rubric.ts';

/** The logarithmic rule would ask for everything from a person who was certain and wrong: beliefs are held inside. */
const HELD_INSIDE = 0.01;

export const SURE_TITLES: Readonly<Record<ScoringRule, string>> = {
  brier: 'How sure, scored by the Brier rule',
  logarithmic: 'How sure, scored by the logarithmic rule',
};

export interface SureScore {
  /** 0..1 */
  readonly share: number;
  readonly sentence: string;
}

/**
 * Scores how sure a learner said they were by a proper rule: the share is an increasing linear function of the rule's
 * score, so stating what one really believes earns the most on average.
 * @param sure  what was stated, 0..1
 * @param right  whether the verdict was right
 * @source Brier 1950, "Verification of forecasts expressed in terms of probability"; Good 1952, "Rational decisions"
 *   (both from memory); that points are 0 to all of the weight is ours
 */
export function sureScore(rule: ScoringRule, sure: number, right: boolean): SureScore {
  return rule === 'brier' ? brier(sure, right) : logarithmic(sure, right);
}

const said = (sure: number, right: boolean) =>
  `${Math.round(sure * 100)} % sure, and the verdict was ${right ? 'right' : 'not right'}`;

/** A calm figure of at most two decimals. */
const figure = (value: number) => String(Math.round(value * 100) / 100);

function brier(sure: number, right: boolean): SureScore {
  const missed = right ? 1 - sure : sure;
  const share = 1 - missed * missed;
  const sentence = `${said(sure, right)}: off by ${figure(missed)}, squared ${figure(missed * missed)}, which leaves ${figure(share)} of the points.`;
  return { share, sentence };
}

function logarithmic(sure: number, right: boolean): SureScore {
  const held = Math.min(Math.max(sure, HELD_INSIDE), 1 - HELD_INSIDE);
  const given = right ? held : 1 - held;
  const worst = Math.log(HELD_INSIDE);
  const best = Math.log(1 - HELD_INSIDE);
  const share = (Math.log(given) - worst) / (best - worst);
  const sentence = `${said(sure, right)}: that gave ${figure(given)} to what came true; by its logarithm ${figure(share)} of the points.`;
  return { share, sentence };
}
