/** What Office.js sends for one batch, as far as the pane uses it; read off the pinned package's own requests. */
export interface WireRequest {
  Actions: WireAction[]
  ObjectPaths: Record<string, WirePath>
}

export interface WireAction {
  Id: number
  /** 1 instantiate, 2 query, 3 method, 4 set property, 5 trace, 7 update. */
  ActionType: number
  Name: string
  ObjectPathId: number
  ArgumentInfo?: WireArguments
  QueryInfo?: { Select?: string[]; Expand?: string[] }
}

export interface WirePath {
  Id: number
  /** 1 global, 3 method, 4 property, 5 indexer, 6 reference, 7 null. */
  ObjectPathType: number
  Name: string
  ParentObjectPathId?: number
  ArgumentInfo?: WireArguments
}

export interface WireArguments {
  Arguments?: unknown[]
  ReferencedObjectPathIds?: (number | null)[]
}

export interface WireResponse {
  Results: { ActionId: number; Value: unknown }[]
  Error?: { Code: string; Message: string; Location: string; ActionIndex: number }
}

/** A fault as Excel reports it. */
export class WireFault extends Error {
  constructor(
    readonly code: string,
    message: string,
  ) {
    super(message)
  }
}
