import {
  type WireAction,
  type WireArguments,
  WireFault,
  type WirePath,
  type WireRequest,
  type WireResponse,
} from './protocol.js'

/** An object of the workbook as the wire sees it: members carry the wire's own names (`GetRange`, `Address`). */
export type WireObject = object
type Bag = Record<string, unknown>

const bag = (object: WireObject): Bag => object as Bag

/**
 * Runs the batches Office.js sends against our own workbook model: the part of Excel behind the object model.
 * A member the model lacks is an error, so that nothing the pane does goes unanswered.
 */
export class WireExecutor {
  readonly #references = new Map<string, WireObject>()
  readonly #ids = new Map<WireObject, string>()
  #kept = 0

  constructor(private readonly root: WireObject) {}

  execute(request: WireRequest): WireResponse {
    const known = new Map<number, WireObject | null>()
    const results: WireResponse['Results'] = []
    for (const [index, action] of request.Actions.entries()) {
      try {
        results.push({ ActionId: action.Id, Value: this.#act(action, request, known) })
      } catch (error) {
        const [code, message] =
          error instanceof WireFault ? [error.code, error.message] : ['NotModelled', String(error)]
        return {
          Results: results,
          Error: { Code: code, Message: message, Location: action.Name, ActionIndex: index },
        }
      }
    }
    return { Results: results }
  }

  #act(action: WireAction, request: WireRequest, known: Map<number, WireObject | null>): unknown {
    if (action.ActionType === 5) return null
    const target = this.#resolve(action.ObjectPathId, request, known)
    if (target === null) return null
    const values = this.#values(action.ArgumentInfo, request, known)
    if (action.ActionType === 1) return this.#identity(target)
    if (action.ActionType === 2) return query(target, action.QueryInfo?.Select ?? [])
    if (action.ActionType === 4) return set(target, action.Name, values[0])
    if (action.ActionType === 3) {
      if (action.Name === '_KeepReference') return this.#keep(target)
      if (action.Name === '_RemoveReference') return this.#release(String(values[0]))
      const result = method(target, action.Name)(...values)
      return result ?? null
    }
    throw new Error(`wire action of type ${action.ActionType} (${action.Name}) is not modelled`)
  }

  #resolve(id: number, request: WireRequest, known: Map<number, WireObject | null>): WireObject | null {
    const earlier = known.get(id)
    if (earlier !== undefined) return earlier
    const path = request.ObjectPaths[String(id)]
    if (!path) throw new Error(`wire path ${id} is missing from the request`)
    const object = this.#follow(path, request, known)
    known.set(id, object)
    return object
  }

  #follow(path: WirePath, request: WireRequest, known: Map<number, WireObject | null>): WireObject | null {
    if (path.ObjectPathType === 1) return this.root
    if (path.ObjectPathType === 7) return null
    if (path.ObjectPathType === 6) {
      const kept = this.#references.get(path.Name)
      if (!kept) throw new WireFault('InvalidObjectPath', `reference ${path.Name} is gone`)
      return kept
    }
    const parent =
      path.ParentObjectPathId === undefined
        ? this.root
        : this.#resolve(path.ParentObjectPathId, request, known)
    if (parent === null) return null
    const values = this.#values(path.ArgumentInfo, request, known)
    if (path.ObjectPathType === 4) return member(parent, path.Name) as WireObject
    const name = path.ObjectPathType === 5 ? 'Indexer' : path.Name
    return method(parent, name)(...values) as WireObject | null
  }

  #values(
    info: WireArguments | undefined,
    request: WireRequest,
    known: Map<number, WireObject | null>,
  ): unknown[] {
    const values = info?.Arguments ?? []
    return values.map((value, index) => {
      const id = info?.ReferencedObjectPathIds?.[index]
      return id ? this.#resolve(id, request, known) : value
    })
  }

  #identity(target: WireObject): Bag {
    const reference = this.#ids.get(target)
    const { Id } = bag(target)
    return {
      ...(Id === undefined ? {} : { Id }),
      ...(reference === undefined ? {} : { _ReferenceId: reference }),
    }
  }

  #release(id: string): null {
    const target = this.#references.get(id)
    if (target) this.#ids.delete(target)
    this.#references.delete(id)
    return null
  }

  #keep(target: WireObject): null {
    if (!this.#ids.has(target)) {
      const id = `kept-${++this.#kept}`
      this.#ids.set(target, id)
      this.#references.set(id, target)
    }
    return null
  }
}

function member(target: WireObject, name: string): unknown {
  if (!(name in target)) throw new Error(`the model of ${target.constructor.name} lacks ${name}`)
  return bag(target)[name]
}

function method(target: WireObject, name: string): (...values: unknown[]) => unknown {
  const found = member(target, name)
  if (typeof found !== 'function')
    throw new Error(`${target.constructor.name}.${name} is no method of the model`)
  return (...values) => found.apply(target, values) as unknown
}

function set(target: WireObject, name: string, value: unknown): null {
  member(target, name)
  bag(target)[name] = value
  return null
}

const wireName = (name: string): string => name.charAt(0).toUpperCase() + name.slice(1)

/** `items/name`, `worksheet/name` and `address` become nested objects under the wire's names. */
function query(target: WireObject, select: string[]): unknown {
  if (select.length === 0) throw new Error(`load on ${target.constructor.name} names no property`)
  const items = (bag(target) as { Items?: WireObject[] }).Items
  if (Array.isArray(items)) {
    const inner = select.map((path) => path.replace(/^items\//, ''))
    return { _Items: items.map((item) => ({ ...identityOf(item), ...(query(item, inner) as Bag) })) }
  }
  const result: Bag = {}
  for (const path of select) {
    const [head = '', ...rest] = path.split('/')
    const value = member(target, wireName(head))
    result[wireName(head)] =
      rest.length === 0
        ? value
        : { ...(result[wireName(head)] as Bag), ...(query(value as WireObject, [rest.join('/')]) as Bag) }
  }
  return result
}

const identityOf = (item: WireObject): Bag => ('Id' in item ? { Id: bag(item).Id } : {})
