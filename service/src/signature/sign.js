import { createPublicKey, sign, verify } from 'node:crypto';
import { keyIdOf, privateKeyOf, publicKeyOf } from './keys.js';
/** Signs messages with a firm's private key. Throws RangeError when the text is no such key. */
export function signerOf(pem) {
    const key = privateKeyOf(pem);
    const keyId = keyIdOf(createPublicKey(key));
    return (message) => ({ keyId, signature: sign(null, Buffer.from(message, 'utf8'), key).toString('base64') });
}
/** Checks signatures against the public keys that are trusted. Throws RangeError when a text is no such key. */
export function verifierOf(pems) {
    const keys = new Map(pems.map((pem) => {
        const key = publicKeyOf(pem);
        return [keyIdOf(key), key];
    }));
    return (message, { keyId, signature }) => {
        const key = keys.get(keyId);
        if (!key)
            return 'key not given';
        const bytes = Buffer.from(signature, 'base64');
        return verify(null, Buffer.from(message, 'utf8'), key, bytes) ? 'valid' : 'invalid';
    };
}
