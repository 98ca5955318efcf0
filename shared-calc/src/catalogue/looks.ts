/** How a reading stands out from the others, as it follows "it is". */
export const LOOKS = {
  written: 'written in grey',
  shaded: 'shaded grey',
  coloured: 'written in another colour',
  filled: 'marked by a coloured background',
  mixed: 'marked by grey or a colour',
} as const
export type Look = keyof typeof LOOKS
