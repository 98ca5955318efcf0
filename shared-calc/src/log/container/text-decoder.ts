interface Decoder {
  decode(bytes?: Uint8Array, options?: { stream?: boolean }): string
}

/** Part of every runtime this code is meant for (Node, browsers, workers), but of no TypeScript library set without the DOM. */
declare const TextDecoder: new (encoding?: string, options?: { fatal?: boolean }) => Decoder

/** A decoder for one of the encodings of the WHATWG Encoding standard. `fatal`: bytes that fit no character throw. */
export function decoderFor(encoding: string, { fatal = false } = {}): Decoder {
  return new TextDecoder(encoding, { fatal })
}
