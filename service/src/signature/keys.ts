import {
  createHash,
  createPrivateKey,
  createPublicKey,
  generateKeyPairSync,
  type KeyObject,
} from 'node:crypto'

/** A firm's key pair as text, to be kept in two files. */
export interface KeyPair {
  /** PKCS #8, PEM: whoever has it can sign in the firm's name. */
  readonly privateKey: string
  /** SPKI, PEM: to be handed to auditors. */
  readonly publicKey: string
  readonly keyId: string
}

/** A new Ed25519 key pair (RFC 8032). */
export function makeKeyPair(): KeyPair {
  const { privateKey, publicKey } = generateKeyPairSync('ed25519')
  return {
    privateKey: privateKey.export({ type: 'pkcs8', format: 'pem' }).toString(),
    publicKey: publicKey.export({ type: 'spki', format: 'pem' }).toString(),
    keyId: keyIdOf(publicKey),
  }
}

/** Fingerprint of a public key: the first half of the SHA-256 of its SPKI form, in hex. */
export const keyIdOf = (key: KeyObject): string =>
  createHash('sha256')
    .update(key.export({ type: 'spki', format: 'der' }))
    .digest('hex')
    .slice(0, 32)

/** Throws RangeError when the text is not an Ed25519 private key. */
export function privateKeyOf(pem: string): KeyObject {
  return ed25519(() => createPrivateKey(pem), 'private')
}

/** Takes a public key; a private one is refused, so that none is handed round by mistake. Throws RangeError. */
export function publicKeyOf(pem: string): KeyObject {
  if (pem.includes('PRIVATE KEY')) throw new RangeError('this is a private key; give the public one')
  return ed25519(() => createPublicKey(pem), 'public')
}

function ed25519(read: () => KeyObject, kind: string): KeyObject {
  let key: KeyObject
  try {
    key = read()
  } catch {
    throw new RangeError(
      `this is not a ${kind} key in PEM form; make a pair of keys with: draughtbook keys KEY`,
    )
  }
  if (key.asymmetricKeyType !== 'ed25519') throw new RangeError(`this is not an Ed25519 key`)
  return key
}
