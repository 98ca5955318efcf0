import { describe, expect, it } from 'vitest'
import { book, type Rows } from '../support/book'
import { closeTo, dep, HOUSE, n50Of, pres, read } from './house'

// Truth: a leakage curve written in house.ts and an independent least-squares fit; words as testers of each country write them, from memory.
const close = closeTo(0.0008)
const both = n50Of([dep, pres])
const runs = [dep, pres]

/** House, volume, floor area, envelope area, temperatures; directions, zero flow, pressure, flow, number of the reading. */
const WORDS: Record<string, readonly [readonly string[], readonly string[], readonly string[], string]> = {
  danish: [
    [
      'Ejendom',
      'Indvendigt volumen',
      'Gulvareal',
      'Klimaskærmens areal',
      'Temperatur inde',
      'Temperatur ude',
    ],
    ['Måling ved undertryk', 'Måling ved overtryk'],
    ['Trykforskel uden blæser før', 'Trykforskel uden blæser efter', 'Tryk', 'Luftmængde'],
    'Nr.',
  ],
  swedish: [
    ['Fastighet', 'Invändig volym', 'Golvarea', 'Klimatskärmens area', 'Innetemperatur', 'Utetemperatur'],
    ['Provning med undertryck', 'Provning med övertryck'],
    ['Tryckskillnad utan fläkt före', 'Tryckskillnad utan fläkt efter', 'Tryckskillnad', 'Flöde'],
    'Mätpunkt',
  ],
  norwegian: [
    ['Eiendom', 'Innvendig volum', 'Gulvareal', 'Klimaskallets areal', 'Innetemperatur', 'Utetemperatur'],
    ['Måling med undertrykk', 'Måling med overtrykk'],
    ['Trykkforskjell uten vifte før', 'Trykkforskjell uten vifte etter', 'Trykk', 'Luftmengde'],
    'Trinn',
  ],
  finnish: [
    ['Kohde', 'Sisätilavuus', 'Lattia-ala', 'Vaipan ala', 'Sisälämpötila', 'Ulkolämpötila'],
    ['Alipainemittaus', 'Ylipainemittaus'],
    ['Paine-ero puhallin pois, alku', 'Paine-ero puhallin pois, loppu', 'Paine-ero', 'Ilmavirta'],
    'Piste',
  ],
  czech: [
    ['Stavba', 'Vnitřní objem', 'Podlahová plocha', 'Plocha obálky', 'Teplota uvnitř', 'Teplota venku'],
    ['Měření při podtlaku', 'Měření při přetlaku'],
    ['Tlak při nulovém průtoku, začátek', 'Tlak při nulovém průtoku, konec', 'Rozdíl tlaků', 'Objemový tok'],
    'Č.',
  ],
  hungarian: [
    [
      'Épület',
      'Nettó légtérfogat',
      'Hasznos alapterület',
      'Határoló felület',
      'Belső hőmérséklet',
      'Külső hőmérséklet',
    ],
    ['Depressziós mérés', 'Túlnyomásos mérés'],
    [
      'Nyugalmi nyomáskülönbség mérés előtt',
      'Nyugalmi nyomáskülönbség mérés után',
      'Nyomáskülönbség',
      'Légáram',
    ],
    'Sorszám',
  ],
  turkish: [
    ['Bina', 'Net hacim', 'Taban alanı', 'Bina kabuğu alanı', 'İç sıcaklık', 'Dış sıcaklık'],
    ['Emme (negatif basınç)', 'Üfleme (pozitif basınç)'],
    ['Sıfır akış basıncı, önce', 'Sıfır akış basıncı, sonra', 'Basınç farkı', 'Hava debisi'],
    'Sıra',
  ],
  portuguese: [
    [
      'Moradia',
      'Volume interior',
      'Área de pavimento',
      'Área da envolvente',
      'Temp. interior',
      'Temp. exterior',
    ],
    ['Ensaio em depressão', 'Ensaio em sobrepressão'],
    ['Pressão sem ventilador, início', 'Pressão sem ventilador, fim', 'Diferença de pressão', 'Caudal'],
    'N.º',
  ],
  italian: [
    [
      'Immobile',
      'Volume netto',
      'Superficie utile',
      'Superficie disperdente',
      'Temp. interna',
      'Temp. esterna',
    ],
    ['Prova in depressione', 'Prova in sovrapressione'],
    ['Pressione a portata nulla, inizio', 'Pressione a portata nulla, fine', 'Pressione edificio', 'Portata'],
    'Punto',
  ],
}

const formOf = ([house, volume, floor, envelope, inside, outside]: readonly string[]): Rows => [
  [house ?? '', 'Pear Tree Barn'],
  [`${volume} (m³)`, HOUSE.volume_m3],
  [`${floor} (m²)`, 171],
  [`${envelope} (m²)`, 512],
  [`${inside} (°C)`, HOUSE.indoor_C],
  [`${outside} (°C)`, HOUSE.outdoor_C],
  ['Barometer (hPa)', HOUSE.barometer_Pa / 100],
]

describe.each(Object.keys(WORDS))('a log in %s', (language) => {
  const [form, titles, [before = '', after = '', pressure = '', flow = ''], number] = WORDS[
    language
  ] as (typeof WORDS)[string]
  const zero = runs.flatMap(
    (run, index): Rows => [
      [`${titles[index]}: ${before} (Pa)`, run.before],
      [`${titles[index]}: ${after} (Pa)`, run.after],
    ],
  )
  const heads = [number, `${pressure} (Pa)`, `${flow} (m³/h)`]
  const LOGS: [string, Rows][] = [
    [
      'one table with a column of directions',
      [
        ...zero,
        ['Run', ...heads],
        ...runs.flatMap(
          (run, index): Rows => run.readings.map((reading, at) => [titles[index] ?? '', at + 1, ...reading]),
        ),
      ],
    ],
    [
      'directions over pairs of columns',
      [
        ['', ...titles],
        [`${before} (Pa)`, dep.before, pres.before],
        [`${after} (Pa)`, dep.after, pres.after],
        [null],
        ['', titles[0] ?? '', '', titles[1] ?? ''],
        [...heads, ...heads.slice(1)],
        ...dep.readings.map((reading, at) => [at + 1, ...reading, ...(pres.readings[at] ?? [])]),
      ],
    ],
  ]

  it.each(LOGS)('is read: %s', async (_, rows) => {
    const { n50, asked, record } = read(
      await book({ Log: [...formOf(form), ['Date', '2026-04-22'], [null], ...rows] }),
    )
    expect(asked).toEqual([])
    expect(record?.building).toMatchObject({
      name: 'Pear Tree Barn',
      floorArea_m2: 171,
      envelopeArea_m2: 512,
    })
    close(n50, both)
  })
})
