import fc from 'fast-check';
import { expect, it } from 'vitest';
import { readRoute, writeRoute } from '../../src/screens/route.ts';

it('finds its way back from every address it writes', () => {
  fc.assert(
    fc.property(fc.constantFrom('job', 'bench', 'debrief'), fc.string({ minLength: 1 }), (screen, id) => {
      const route = { screen, id } as const;
      expect(readRoute(writeRoute(route))).toEqual(route);
    }),
  );
  expect(readRoute(writeRoute({ screen: 'jobs' }))).toEqual({ screen: 'jobs' });
});

it.each(['', '#', '#/', '#/nowhere/1', '#/bench', '#/bench/', '#content', '#/jobs/extra'])(
  'leads “%s” to the list of jobs',
  (hash) => expect(readRoute(hash)).toEqual({ screen: 'jobs' }),
);

it('does not stumble over a broken address', () => {
  expect(readRoute('#/job/%E0%A4%A')).toEqual({ screen: 'job', id: '%E0%A4%A' });
});
