/** One stop of the round through the house while the fan holds it under pressure. */
export interface RoundStop {
  readonly id: string
  readonly place: string
  /** Where to hold the hand or the smoke. */
  readonly where: string
  /** Kind of a leak found there, as the leak log names it. */
  readonly kind: string
}

/** In the order of a walk from the fan through the house. Common practice; no source. */
export const ROUND_STOPS: readonly RoundStop[] = [
  {
    id: 'device',
    place: 'fan opening',
    where: 'the frame and panel that hold the fan, all the way round',
    kind: 'device opening',
  },
  {
    id: 'keyholes',
    place: 'keyholes and letter plates',
    where: 'entrance doors: keyhole, letter plate, threshold',
    kind: 'other',
  },
  {
    id: 'seals',
    place: 'window and door seals',
    where: 'corners of the sashes, hinges, the joint between two leaves',
    kind: 'window or door seal',
  },
  {
    id: 'frames',
    place: 'window and door frames',
    where: 'the joint between frame and wall, sills, roller shutter boxes',
    kind: 'window or door frame',
  },
  {
    id: 'traps',
    place: 'traps and drains',
    where: 'every trap and floor drain holds water; unused connections are capped',
    kind: 'service penetration',
  },
  {
    id: 'services',
    place: 'services through the envelope',
    where: 'pipes, cables, flues, meter boxes, the plant room',
    kind: 'service penetration',
  },
  {
    id: 'sockets',
    place: 'sockets, switches and chases',
    where: 'on outside walls and on walls that reach the roof; light fittings',
    kind: 'socket or chase',
  },
  {
    id: 'hatches',
    place: 'hatches',
    where: 'loft hatch, access panels, lift shaft, cellar door',
    kind: 'hatch',
  },
  {
    id: 'ventilation',
    place: 'ventilation unit and ducts',
    where: 'the seals set for the test, casing, ducts where they leave the envelope',
    kind: 'stack or duct',
  },
  {
    id: 'membranes',
    place: 'membranes',
    where: 'laps, staples, penetrations, where the membrane meets the wall',
    kind: 'membrane lap',
  },
  {
    id: 'floor',
    place: 'wall to floor',
    where: 'skirtings, the foot of light walls, stairs on outside walls',
    kind: 'wall to floor',
  },
  {
    id: 'roof',
    place: 'wall to roof',
    where: 'eaves, ridge, purlins, the top of partition walls',
    kind: 'wall to roof',
  },
]
