/** A question to a worker and its answer, held together by a number. */
interface Asked<Q> {
  readonly nth: number;
  readonly question: Q;
}
type Replied<A> = { readonly nth: number } & ({ readonly answer: A } | { readonly failed: string });

/**
 * Work that would hold the page up, done in a worker of its own; where there are no workers, on the spot.
 * @param start makes the worker, which calls `answerInWorker`; started at the first question
 */
export function offThread<Q, A>(
  start: () => Worker,
  onTheSpot: () => Promise<(question: Q) => A>,
): (question: Q) => Promise<A> {
  let worker: Worker | null = null;
  let asked = 0;
  const waiting = new Map<number, { done(answer: A): void; failed(why: Error): void }>();
  const started = () => {
    const fresh = start();
    fresh.onmessage = ({ data }: MessageEvent<Replied<A>>) => {
      const one = waiting.get(data.nth);
      waiting.delete(data.nth);
      if ('answer' in data) one?.done(data.answer);
      else one?.failed(new Error(data.failed));
    };
    fresh.onerror = ({ message }) => {
      for (const { failed } of waiting.values()) failed(new Error(message));
      waiting.clear();
    };
    return fresh;
  };
  return async (question) => {
    if (typeof Worker === 'undefined') return (await onTheSpot())(question);
    worker ??= started();
    const nth = asked++;
    const answer = new Promise<A>((done, failed) => waiting.set(nth, { done, failed }));
    worker.postMessage({ nth, question } satisfies Asked<Q>);
    return answer;
  };
}

/** The worker's side. */
export function answerInWorker<Q, A>(answer: (question: Q) => A): void {
  addEventListener('message', ({ data: { nth, question } }: MessageEvent<Asked<Q>>) => {
    postMessage(reply(nth, question));
  });
  function reply(nth: number, question: Q): Replied<A> {
    try {
      return { nth, answer: answer(question) };
    } catch (error) {
      return { nth, failed: String(error) };
    }
  }
}
