/** The add-in's id. It is in users' workbooks and never changes. */
export const ADD_IN_ID = 'c9f0c2b4-5d0e-4f0c-9a3d-7be1f6a8d215'

/** The build of the pane writes its manifest for this address, which nobody can have (RFC 2606); the service puts in its own. */
export const ANY_ADDRESS = 'https://draughtbook.invalid'

/** What setting up the add-in asks of a system. Everything is for this user alone and needs no administrator. */
export interface Excel {
  /** Where certificate, key and manifest are kept. */
  readonly folder: string
  /** Where the system registers the add-in, in words for a person. */
  readonly registry: string
  /** How a person finds the button once Excel is open. */
  readonly find: string
  /** What keeps the add-in from being registered, in a sentence. */
  obstacle(): Promise<string | undefined>
  /** @param file - certificate in PEM form */
  isTrusted(file: string, fingerprint: string): Promise<boolean>
  /** @throws Error with what the system said */
  trust(file: string): Promise<void>
  /** @throws Error with what the system said */
  distrust(fingerprint: string): Promise<void>
  isRegistered(): Promise<boolean>
  /** @param manifest - path of the XML manifest */
  register(manifest: string): Promise<void>
  unregister(): Promise<void>
  /** Resolves to whether Excel was started. */
  open(): Promise<boolean>
}
