import type { Page } from 'playwright-core';
import type { Draft } from '../../src/records/draft.ts';
import type { Parsed } from '../../src/scenario/scenario.ts';
import type { AssessorDesk } from '../../src/screens/assessor/desk.ts';

export interface Scene {
  readonly name: string;
  readonly hash: string;
  readonly act?: (page: Page) => Promise<void>;
  /** The whole page in the picture, not only what is in sight. */
  readonly whole?: boolean;
}

const press = (page: Page, name: string | RegExp) => page.getByRole('button', { name }).first().click();
const turnTo = (page: Page, name: string) => page.getByRole('tab', { name, exact: true }).click();

async function assess(page: Page, ...about: readonly RegExp[]): Promise<void> {
  for (const one of about) await page.getByRole('checkbox', { name: one }).first().check();
  await press(page, /^Assess th/);
  await page.locator('.as-picture canvas').waitFor();
}

async function changeMark(page: Page): Promise<void> {
  await assess(page, /S. Novak/);
  await press(page, /^go to act/);
  await press(page, /^change this mark/);
  await press(page, /^Change the mark$/);
}

async function decide(page: Page): Promise<void> {
  await assess(page, /T. Okafor.*09:10|T. Okafor/);
  await turnTo(page, 'Learner');
  await page.getByLabel('How you know').fill('Known to me');
  await page.getByLabel('Who supervised').fill('M. Hale');
  await page.getByText('The learner declares').click();
  await turnTo(page, 'Remarks');
  await page.getByLabel('What you saw').fill('Kept the leads tidy and said aloud what she expected to see.');
  await press(page, 'Add the observation');
  await turnTo(page, 'Marks');
  await press(page, /^change this mark/);
  await page.getByLabel('New mark').fill('1');
  await page.getByLabel('Reason').fill('Looked at the risers on the mat while I watched.');
  await press(page, /^Change the mark$/);
  await turnTo(page, 'Criteria');
  for (const met of await page.getByLabel('met', { exact: true }).all()) await met.check();
  await turnTo(page, 'Decide');
  for (const rule of ['Valid', 'Sufficient', 'Authentic', 'Current'])
    await page.getByRole('checkbox', { name: rule }).check();
  await page.getByLabel('competent', { exact: true }).check();
  await page.getByLabel('Your name').fill('R. Lindqvist');
  await press(page, /^Make a key/);
  await page.getByRole('button', { name: 'Sign the record' }).waitFor();
}

async function signed(page: Page): Promise<void> {
  await decide(page);
  await press(page, 'Sign the record');
  await page.locator('.as-printed').waitFor();
}

/** Hands the signed file back to the desk, changed on the way. */
async function checked(page: Page, change: (file: EvidenceLike) => void): Promise<void> {
  await signed(page);
  const download = page.waitForEvent('download');
  await press(page, /to hand over/);
  const stream = await (await download).createReadStream();
  const chunks: Buffer[] = [];
  for await (const chunk of stream) chunks.push(chunk as Buffer);
  const file = JSON.parse(Buffer.concat(chunks).toString('utf8')) as EvidenceLike;
  change(file);
  await page.getByRole('link', { name: 'Check a file' }).click();
  await page.locator('input[type=file]').setInputFiles({
    name: 'record.json',
    mimeType: 'application/json',
    buffer: Buffer.from(JSON.stringify(file)),
  });
  await page.locator('.as-verdict').waitFor();
}

/** Two made-up assessors sign for the same attempts and part on some. */
async function twoAssessors(page: Page): Promise<void> {
  // The runner of this script names functions through a helper that a page does not have.
  await page.evaluate('globalThis.__name = (named) => named');
  await page.evaluate(async () => {
    const { desk } = globalThis as unknown as { desk: AssessorDesk };
    const got = async <T>(answer: Promise<Parsed<T>>): Promise<T> => {
      const found = await answer;
      if (!found.ok) throw new Error(found.issues[0]?.sentence);
      return found.value;
    };
    const attempts = await got(desk.attempts());
    for (const [who, owner] of ['R. Lindqvist', 'J. Moreau'].entries()) {
      const { fingerprint } = await got(desk.makeKey(owner));
      for (const [nth, attempt] of attempts.entries()) {
        const id = await got(desk.begin([attempt.id]));
        const { draft, revision } = await got(desk.draft(id));
        const met = attempt.state === 'handedIn' && (who === 0 || nth !== 2);
        const changed: Draft = {
          ...draft,
          assessor: owner,
          supervisedBy: 'M. Hale',
          learner: {
            ...draft.learner,
            identifiedBy: 'Known',
            declaration: { text: 'Own work.', at: draft.id },
          },
          rulesOfEvidence: { validity: true, sufficiency: true, authenticity: true, currency: true },
          outcome: met ? 'competent' : 'notYet',
          criteria: {
            ...draft.criteria,
            judgements: draft.criteria.judgements.map((judgement, line) => ({
              ...judgement,
              met: met && (line + who + nth) % 5 !== 0 ? 'met' : 'notYet',
            })),
          },
        };
        await got(desk.save(changed, revision));
        await got(desk.sign(changed, fingerprint));
      }
    }
  });
  await page.getByRole('link', { name: 'Two assessors' }).click();
  await page.locator('.as-agreement').first().waitFor();
}

const shut = (page: Page) =>
  page
    .getByText(/^(Easy|Medium|Hard|Nothing hidden|Beyond)/)
    .first()
    .waitFor();

/** A job of all three parts, each with something hidden, on a bench that is not in order. */
async function wholeUnit(page: Page, open: string): Promise<void> {
  await press(page, 'Make a job');
  await page.getByLabel('Kind of place').selectOption({ label: 'Riser joint' });
  await page.getByLabel('Fault here').selectOption({ label: 'Bad joint at the riser' });
  await page.getByRole('checkbox', { name: 'Field frame' }).check();
  await page.getByRole('button', { name: 'coil 2' }).click();
  await page.getByLabel('Open coil').check();
  await page.getByRole('checkbox', { name: 'Brush plate' }).check();
  await page.getByLabel('Place').selectOption({ label: 'Insulated holder 2' });
  await page.getByLabel('Packed dirt across the insulation').check();
  await page.getByRole('radio', { name: /The bench itself/ }).check();
  await page.getByLabel('Lamp blown').check();
  await page.getByRole('radio', { name: new RegExp(open) }).check();
  await shut(page);
}

async function ownRubric(page: Page): Promise<void> {
  await press(page, 'Make a job');
  await page.getByLabel('A rubric of this job’s own').check();
  await page.getByLabel('Points, Lamp proved before and after').fill('12');
  await page.getByLabel(/Least share.*, Neighbouring/).fill('80');
  await page.getByLabel('Mark the order of the tests').check();
  await page.getByLabel('How sure the learner says').selectOption('brier');
}

interface EvidenceLike {
  readonly attempts: readonly { readonly attempt: { readonly entries: { atMs: number }[] } }[];
}

export const SCENES: readonly Scene[] = [
  { name: 'attempts', hash: '#/assessor', act: async (page) => page.getByRole('checkbox').first().check() },
  { name: 'review', hash: '#/assessor', act: (page) => assess(page, /M. Brandt/) },
  {
    name: 'review-set',
    hash: '#/assessor',
    act: async (page) => {
      await press(page, /with 1 more/);
      await press(page, /^Assess these 2/);
      await page.locator('.as-picture canvas').waitFor();
      await page.getByLabel('Place in the attempt').fill('60000');
      await turnTo(page, 'Criteria');
    },
  },
  { name: 'review-stopped', hash: '#/assessor', act: changeMark },
  { name: 'decide', hash: '#/assessor', act: decide },
  { name: 'record', hash: '#/assessor', act: signed, whole: true },
  { name: 'check-intact', hash: '#/assessor', act: (page) => checked(page, () => undefined) },
  {
    name: 'check-altered',
    hash: '#/assessor',
    act: (page) =>
      checked(page, (file) => {
        file.attempts[0]!.attempt.entries[40]!.atMs += 1;
      }),
  },
  { name: 'keys', hash: '#/assessor/keys' },
  { name: 'records', hash: '#/assessor/records' },
  { name: 'agreement', hash: '#/assessor/agreement' },
  { name: 'safe', hash: '#/assessor/safe' },
  {
    name: 'in-jobs',
    hash: '#/instructor',
    act: (page) =>
      press(page, 'Make a job')
        .then(() => page.goBack())
        .then(() => undefined),
  },
  { name: 'in-armature', hash: '#/instructor', act: (page) => wholeUnit(page, 'Armature'), whole: true },
  { name: 'in-frame', hash: '#/instructor', act: (page) => wholeUnit(page, 'Field frame'), whole: true },
  { name: 'in-plate', hash: '#/instructor', act: (page) => wholeUnit(page, 'Brush plate') },
  { name: 'in-bench', hash: '#/instructor', act: (page) => wholeUnit(page, 'The bench itself') },
  { name: 'in-rubric', hash: '#/instructor', act: ownRubric, whole: true },
  {
    name: 'in-set',
    hash: '#/instructor/set',
    act: async (page) => {
      await press(page, 'Lay out the set');
      await page.getByText(/jobs laid out/).waitFor();
    },
  },
  { name: 'agreement-two', hash: '#/assessor', act: twoAssessors },
];
