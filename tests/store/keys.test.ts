import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { beforeEach, describe, expect, it } from 'vitest';
import { makeSigner, signRecord, verifySignature } from '../../src/records/sign.ts';
import { openBrowserStore } from '../../src/store/browserStore.ts';
import { recordOver } from '../records/support/attempt.ts';

const { subtle } = globalThis.crypto;

beforeEach(() => {
  globalThis.indexedDB = new IDBFactory();
});

async function keptKey(owner: string) {
  const { privateKey, publicKey, fingerprint } = await makeSigner(subtle);
  const kept = { fingerprint, publicKey, owner, madeAt: '', privateKey: privateKey as CryptoKey };
  await (await openBrowserStore()).keys.add(kept);
  return kept;
}

describe('keys kept in the browser', () => {
  it('still sign after the page was opened again, and still cannot be read out', async () => {
    await keptKey('R. Lindqvist');
    const [found] = await (await openBrowserStore()).keys.list();
    const signer = { ...found!, privateKey: found!.privateKey! };
    expect(signer.privateKey.extractable).toBe(false);
    await expect(subtle.exportKey('jwk', signer.privateKey)).rejects.toThrow();
    const record = recordOver([{ attempt: 'a-1', seal: '0'.repeat(64) }]);
    const signed = await signRecord(record, signer, '2026-03-02T11:00:00.000Z', subtle);
    expect(await verifySignature(signed, subtle)).toBeNull();
  });

  it('are never added twice, can be given another name, and removed', async () => {
    const kept = await keptKey('R. L.');
    const { keys } = await openBrowserStore();
    await expect(keys.add(kept)).rejects.toThrow(/already/);
    await keys.rename(kept.fingerprint, 'R. Lindqvist');
    expect(await keys.list()).toEqual([expect.objectContaining({ owner: 'R. Lindqvist' })]);
    await expect(keys.rename('none', 'x')).rejects.toThrow(/no key none/);
    await keys.remove(kept.fingerprint);
    expect(await keys.list()).toEqual([]);
  });

  it('leave their private half behind when everything is taken to a file', async () => {
    const kept = await keptKey('R. L.');
    const text = await (await openBrowserStore()).everything('2026-03-02T12:00:00.000Z');
    expect(JSON.parse(text).keys).toEqual([
      { fingerprint: kept.fingerprint, publicKey: kept.publicKey, owner: 'R. L.', madeAt: '' },
    ]);
  });
});
