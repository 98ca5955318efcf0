/** What setting up the add-in asks of a system. Everything is for this user alone and needs no administrator. */
export interface Excel {
  /** Where certificate, key and manifest are kept. */
  readonly folder: string
  /** Where the system is told of the add-in, as a person finds it. */
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
