/** The add-in's id. It is in users' workbooks and never changes. */
export const ADD_IN_ID = 'c9f0c2b4-5d0e-4f0c-9a3d-7be1f6a8d215'

/** The build of the pane writes its manifest for this address, which nobody can have (RFC 2606); the service puts in its own. */
export const ANY_ADDRESS = 'https://draughtbook.invalid'
