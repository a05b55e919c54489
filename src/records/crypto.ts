/**
 * The few calls of the Web Cryptography API that seals and signatures need, handed in by the caller: `crypto.subtle`
 * of the browser or of Node fits as it is. A stand-alone type, because this folder knows no browser.
 */
export type Bytes = Uint8Array<ArrayBuffer>;

/** A key as the platform holds it; what is inside cannot be seen. */
export interface KeyHandle {
  readonly type: string;
  readonly extractable: boolean;
}

export interface KeyPair {
  readonly privateKey: KeyHandle;
  readonly publicKey: KeyHandle;
}

interface Curve {
  readonly name: 'ECDSA';
  readonly namedCurve: 'P-256';
}

interface Signing {
  readonly name: 'ECDSA';
  readonly hash: 'SHA-256';
}

export interface Subtle {
  digest(algorithm: 'SHA-256', data: Bytes): Promise<ArrayBuffer>;
  generateKey(algorithm: Curve, extractable: boolean, usages: ('sign' | 'verify')[]): Promise<KeyPair>;
  exportKey(format: 'spki', key: KeyHandle): Promise<ArrayBuffer>;
  importKey(
    format: 'spki',
    data: Bytes,
    algorithm: Curve,
    extractable: boolean,
    usages: 'verify'[],
  ): Promise<KeyHandle>;
  sign(algorithm: Signing, key: KeyHandle, data: Bytes): Promise<ArrayBuffer>;
  verify(algorithm: Signing, key: KeyHandle, signature: Bytes, data: Bytes): Promise<boolean>;
}

export const P256: Curve = { name: 'ECDSA', namedCurve: 'P-256' };
export const ECDSA_SHA256: Signing = { name: 'ECDSA', hash: 'SHA-256' };
