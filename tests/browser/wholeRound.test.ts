import type { Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { EvidenceFile } from '../../src/records/evidenceFile.ts';
import { sealAttempt } from '../../src/records/seal.ts';
import type { Scenario } from '../../src/scenario/scenario.ts';
import { altered } from '../records/support/alter.ts';
import { giveFile, jsonFile, savedBy } from './support/files.ts';
import { closeBrowser, type Opened, openApp } from './support/page.ts';
import { decideAndHandIn, writeLine } from './support/paper.ts';
import { toBench } from './support/screens.ts';
import { Senses } from './support/senses.ts';

let opened: Opened;
let page: Page;
beforeAll(async () => {
  opened = await openApp({}, '#/instructor');
  page = opened.page;
});
afterAll(async () => {
  await opened.close();
  await closeBrowser();
});

const press = (name: string | RegExp) => page.getByRole('button', { name }).first().click();
const leaf = (name: string) => page.getByRole('tab', { name, exact: true }).click();

const wordsOf = async (found: Locator) => (await found.textContent()) ?? '';

/** The text of a table row, by the words its heading begins with. */
const row = (words: RegExp) => wordsOf(page.getByRole('row', { name: words }).first());

/** What each part of the round hands to the next. */
const round = { jobId: '', file: null as EvidenceFile | null };

describe('a whole round: instructor, apprentice, assessor', () => {
  it('the instructor hides a bad riser, sees what the tests will show, weighs the marks and hands the job out', async () => {
    await press('Make a job');
    await page.getByLabel('Unit').fill('Starter motor, evening class');
    await page.getByLabel('Assessed').check();
    await page.getByLabel('Kind of place').selectOption({ label: 'Riser joint' });
    await page.getByLabel('Which one').selectOption('5');
    await page.getByLabel('Fault here').selectOption({ label: 'Bad joint at the riser' });
    await page.getByText(/stands out of its readings/).waitFor({ timeout: 30_000 });
    expect(await row(/^Open circuit, neighbouring/)).toMatch(/✓ seen/);
    expect(await row(/^Earth/)).toMatch(/not seen/);

    await page.getByLabel('A rubric of this job’s own').check();
    await page.getByLabel('Points, Off when not in use and at the end').fill('6');
    await page.getByText('“Off when not in use and at the end” is worth 6 points; built in: 4.').waitFor();
    await press('Save');
    await page.getByText(/stands on the apprentices’ board/).waitFor();
    const { name, text } = await savedBy(page, page.getByRole('button', { name: 'Hand out as a file' }));
    const scenario = JSON.parse(text) as Scenario;
    round.jobId = scenario.public.id;
    expect(name).toBe(`${round.jobId}.json`);
    expect(scenario.hidden.armature.faults).toMatchObject([{ kind: 'riserJoint', bar: 5 }]);
    expect(scenario.public.rubric?.criteria).toContainEqual({ criterion: 'notLeftOn', weight: 6 });
  }, 90_000);

  it('the apprentice takes it from the board, reads one pair, decides and hands in', async () => {
    await page.goto(`${new URL(page.url()).origin}/#/jobs`);
    await page.locator(`a[href="#/job/${round.jobId}"]`).first().click();
    await page.getByLabel(/Name on the record/).fill('T. Okafor');
    await page.goBack();
    const hand = await toBench(page, round.jobId);
    const senses = new Senses(page);
    await hand.drag('mat', 'cradle');
    await senses.until(/armature lies in the cradle/);
    const bars = (await hand.within('side')).filter((id) => id.startsWith('bar:'));
    await hand.press('chalk');
    await hand.press(bars[3]!, 'side');
    await hand.drag('lead:ammeter.1:handle', bars[3]!, 'end');
    await hand.drag('lead:ammeter.2:handle', bars[4]!, 'end');
    await hand.press('selector:high');
    const reading = await senses.needle();
    await hand.press('selector:off');
    await writeLine(page, /neighbour/i, 0, () => page.getByLabel('Needle at').fill(String(reading)));
    await decideAndHandIn(page, { condition: /sound/i, next: /service/i, because: 'One pair read well.' });
    expect(opened.complaints).toEqual([]);
  }, 90_000);

  it('the assessor plays it, changes one mark with a reason, signs and exports', async () => {
    await page.goto(`${new URL(page.url()).origin}/#/assessor`);
    await page
      .getByRole('checkbox', { name: /T. Okafor/ })
      .first()
      .check();
    await press(/^Assess this/);
    await page.locator('.as-picture canvas').waitFor({ timeout: 30_000 });
    await press('Play');
    await page.waitForFunction(() => /act [1-9]/.test(document.querySelector('.as-time')?.textContent ?? ''));
    await press('Pause');
    await press(/^go to act .* behind “Recorded before the verdict”/);
    await press('change this mark: “Recorded before the verdict”');
    await press('Change the mark');
    await page.getByText('Expected a reason, but nothing came.').waitFor();
    await page.getByLabel('New mark').fill('2');
    await page.getByLabel('Reason, for the record').fill('Told me of the other tests as they went.');
    await press('Change the mark');

    await leaf('Learner');
    await page.getByLabel('How you know').fill('Known to me');
    await leaf('Decide');
    await page.getByLabel('not yet competent').check();
    await page.getByLabel('Your name').fill('R. Lindqvist');
    await press(/^Make a key/);
    await press('Sign the record');
    await page.getByText(/Expected who supervised/).waitFor();
    await leaf('Learner');
    await page.getByLabel('Who supervised').fill('M. Hale');
    await leaf('Decide');
    await press('Sign the record');

    const printed = page.locator('.as-printed');
    await printed.waitFor({ timeout: 30_000 });
    const words = await wordsOf(printed);
    expect(words).toContain('The fault was on the learner’s machine; supervised by M. Hale.');
    expect(words).toContain('“Off when not in use and at the end” is worth 6 points; built in: 4.');
    expect(words).toMatch(/Changed by the assessor from [\d.]+ to 2: Told me of the other tests/);
    const { text } = await savedBy(page, page.getByRole('button', { name: /to hand over/ }));
    round.file = JSON.parse(text) as EvidenceFile;
    expect(round.file.signed?.record.signedWith.fingerprint).toMatch(/^[0-9a-f]{4} /);
    expect(words).toContain(round.file.signed!.record.signedWith.fingerprint);
  }, 90_000);

  it('the desk finds the file as it was signed, and says where it was altered, re-chained or not', async () => {
    const file = round.file!;
    const check = async (content: EvidenceFile): Promise<string> => {
      await page.goto(`${new URL(page.url()).origin}/#/assessor/attempts`);
      await page.getByRole('link', { name: 'Check a file' }).click();
      await page.getByRole('heading', { name: 'Check a file' }).waitFor();
      await giveFile(
        page,
        page.getByRole('button', { name: 'Open a file…' }),
        jsonFile(content, 'record.json'),
      );
      await page.locator('.as-checks').waitFor({ timeout: 30_000 });
      return wordsOf(page.locator('.as-checks'));
    };
    const intact = await check(file);
    expect(intact).toMatch(/Signature\s*✓ holds/);
    expect(intact).toMatch(/Done again\s*✓ holds/);
    expect(intact).not.toMatch(/✕/);

    const n = file.attempts[0]!.attempt.entries.findIndex(({ action }) => action.type === 'verdict.write');
    const path = `attempts[0].attempt.entries[${n}].action.verdict.disposition`;
    const forged = altered(file, path, 'resolder');
    expect(await check(forged)).toContain(`attempts[0].entries[${n}].action.verdict.disposition`);

    const seal = await sealAttempt(forged.attempts[0]!.attempt, crypto.subtle);
    const rechained = await check(altered(forged, 'attempts[0].seal', seal));
    expect(rechained).toMatch(/Seal\s*✓ holds/);
    expect(rechained).toMatch(/is not the one the record was signed over: it was altered and sealed anew/);

    const repointed = altered(
      altered(forged, 'attempts[0].seal', seal),
      'signed.record.evidence[0].seal',
      seal.end,
    );
    expect(await check(repointed)).toContain('signed.record.evidence[0].seal');
    expect(opened.complaints).toEqual([]);
  }, 90_000);

  it('everything is kept in one file, and another browser takes it in', async () => {
    await page.goto(`${new URL(page.url()).origin}/#/assessor/safe`);
    const { text } = await savedBy(page, page.getByRole('button', { name: 'Save everything to a file' }));
    const other = await openApp({}, '#/assessor/safe');
    await other.page.getByRole('heading', { name: 'Keep safe' }).waitFor();
    const takeIn = other.page.getByRole('button', { name: 'Take in a file of everything…' });
    await giveFile(other.page, takeIn, jsonFile(text, 'everything.json'));
    // The attempt, the job, the record and the key, which cannot sign there.
    await other.page.getByText('4 things added.').waitFor({ timeout: 30_000 });
    await other.page.getByRole('link', { name: 'Drafts and records' }).click();
    await other.page.getByText('T. Okafor').first().waitFor();
    expect(other.complaints).toEqual([]);
    await other.close();
  }, 90_000);
});
