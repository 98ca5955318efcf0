import type { View } from '../grid/view.js'
import { readLabel } from './label.js'

/** What the wording of a log says of the habits of whoever keeps it. */
export interface Habits {
  /** Feet, Fahrenheit or cfm anywhere: customary units. */
  readonly american: boolean
  /** Labels in a language whose countries write the day of a date first. */
  readonly dayFirst: boolean
}

const CUSTOMARY = ['degF', 'cuft/minute', 'cuft', 'sqft', 'inHgConventional', 'ft']

/** Words of a log's labels that English does not have; German, French, Dutch, Polish, Spanish, Italian, Nordic, Czech, Portuguese. */
const NOT_ENGLISH = new Set(
  `datum dato fecha paivamaara pvm badania budynek budynku kubatura cisnienie roznica przeplyw strumien temperatura temperatur innentemperatur
  aussentemperatur gebaude volumen nettovolumen luftdruck differenzdruck volumenstrom unterdruck uberdruck batiment mesure essai debit ecart
  pression interieur interieure exterieur exterieure meting woning gebouw inhoud binnentemperatuur buitentemperatuur drukverschil debiet
  luchtdruck luchtdebiet onderdruk overdruk vivienda edificio ensayo volumen presion caudal edificio prova volume_interno portata pressione
  bygning bygg hus innetemp utetemp innetemperatur utetemperatur tryk trykk tryck tryckskillnad luftflode luftmengde luftmangde lufttryck
  barometertrykk maling provning undertryck overtryck undertrykk overtrykk budova objem teplota tlak prutok rakennus tilavuus lampotila
  affaire surpression avant apres moyenne chantier onderdrukmeting cantiere
  paine ilmavirta edificacao ensaio vazao`.split(/\s+/),
)

/** Fewer could be a name of a place or a firm. */
const WORDS = 3

export function habitsOf(views: readonly View[]): Habits {
  let american = false
  let words = 0
  for (const view of views)
    for (let row = 0; row < Math.min(view.rows, 80); row++)
      for (let column = 0; column < Math.min(view.columns, 30); column++) {
        const text = view.text(row, column)
        if (text === undefined || text.length > 80) continue
        const { unit, tokens } = readLabel(text)
        american ||= unit !== undefined && CUSTOMARY.includes(unit.unit)
        words += tokens.filter((token) => NOT_ENGLISH.has(token)).length
      }
  return { american, dayFirst: !american && words >= WORDS }
}
