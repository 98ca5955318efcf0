import { WireFault } from './protocol.js'
import { ModelRange } from './workbook-model.js'

export class ModelSeries {
  readonly Id: string
  ChartType = ''
  x: ModelRange | undefined
  y: ModelRange | undefined

  constructor(
    readonly owner: ModelSeriesList,
    public Name: string,
    id: number,
  ) {
    this.Id = `series-${id}`
  }

  SetXAxisValues(range: ModelRange): void {
    this.x = range
  }

  SetValues(range: ModelRange): void {
    this.y = range
  }

  Delete(): void {
    this.owner.Items.splice(this.owner.Items.indexOf(this), 1)
  }
}

class ModelSeriesList {
  readonly Items: ModelSeries[] = []
  #count = 0

  Add(name: string): ModelSeries {
    const series = new ModelSeries(this, name, ++this.#count)
    this.Items.push(series)
    return series
  }

  Indexer(id: string): ModelSeries {
    const found = this.Items.find((series) => series.Id === id)
    if (!found) throw new WireFault('ItemNotFound', `no series ${id}`)
    return found
  }

  GetItemAt(index: number): ModelSeries {
    const found = this.Items[index]
    if (!found) throw new WireFault('InvalidArgument', `no series ${index}`)
    return found
  }
}

export class ModelChart {
  constructor(readonly Id: string) {}

  readonly Title = { Text: '' }
  readonly Series = new ModelSeriesList()
  readonly Axes = {
    ValueAxis: { ScaleType: 'Linear', Title: { Text: '' } },
    CategoryAxis: { ScaleType: 'Linear', Title: { Text: '' } },
  }
  anchor = ''

  SetPosition(startCell: string): void {
    this.anchor = startCell
  }
}

export class ModelCharts {
  readonly all: ModelChart[] = []

  Add(type: string, source: ModelRange): ModelChart {
    if (type !== 'XYScatter' || !(source instanceof ModelRange))
      throw new WireFault('InvalidArgument', 'chart')
    const chart = new ModelChart(`chart-${this.all.length + 1}`)
    chart.Series.Add('guessed by Excel')
    this.all.push(chart)
    return chart
  }

  Indexer(id: string): ModelChart {
    const found = this.all.find((chart) => chart.Id === id)
    if (!found) throw new WireFault('ItemNotFound', `no chart ${id}`)
    return found
  }
}
