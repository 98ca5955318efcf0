import type { SizeWord } from '../../contract/record/index.js'

/** What a size said in words is taken for. Source of all: common practice, no source. */
export type TakenFor = { readonly diameter_mm: number } | { readonly width_mm: number }

export const sizeWords: Readonly<Record<SizeWord, TakenFor & { readonly likeness: string }>> = {
  pinhole: { diameter_mm: 1, likeness: 'round, 1 mm' },
  pencil: { diameter_mm: 7, likeness: 'round, 7 mm, a pencil goes through' },
  finger: { diameter_mm: 20, likeness: 'round, 20 mm, a finger goes in' },
  fist: { diameter_mm: 90, likeness: 'round, 90 mm, a fist goes in' },
  'hairline gap': { width_mm: 0.2, likeness: '0.2 mm wide, barely visible' },
  'card gap': { width_mm: 0.8, likeness: '0.8 mm wide, a plastic card goes in' },
  'pencil gap': { width_mm: 7, likeness: '7 mm wide, a pencil goes in' },
  'finger gap': { width_mm: 20, likeness: '20 mm wide, a finger goes in' },
}
