import { createHash, createPrivateKey, createPublicKey, generateKeyPairSync, } from 'node:crypto';
/** A new Ed25519 key pair (RFC 8032). */
export function makeKeyPair() {
    const { privateKey, publicKey } = generateKeyPairSync('ed25519');
    return {
        privateKey: privateKey.export({ type: 'pkcs8', format: 'pem' }).toString(),
        publicKey: publicKey.export({ type: 'spki', format: 'pem' }).toString(),
        keyId: keyIdOf(publicKey),
    };
}
/** Fingerprint of a public key: the first half of the SHA-256 of its SPKI form, in hex. */
export const keyIdOf = (key) => createHash('sha256')
    .update(key.export({ type: 'spki', format: 'der' }))
    .digest('hex')
    .slice(0, 32);
/** Throws RangeError when the text is no Ed25519 private key. */
export function privateKeyOf(pem) {
    return ed25519(() => createPrivateKey(pem), 'private');
}
/** Takes a public key; a private one is refused, so that none is handed round by mistake. Throws RangeError. */
export function publicKeyOf(pem) {
    if (pem.includes('PRIVATE KEY'))
        throw new RangeError('this is a private key; give the public one');
    return ed25519(() => createPublicKey(pem), 'public');
}
function ed25519(read, kind) {
    let key;
    try {
        key = read();
    }
    catch {
        throw new RangeError(`this is not a ${kind} key in PEM form`);
    }
    if (key.asymmetricKeyType !== 'ed25519')
        throw new RangeError(`this is not an Ed25519 key`);
    return key;
}
