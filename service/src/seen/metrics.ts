import type { RequestHandler } from 'express'
import { Counter, collectDefaultMetrics, Gauge, Histogram, Registry } from 'prom-client'
import { routeOf } from './audit.js'

/** Metrics in the Prometheus text format; one set per app, so that two apps of one process do not mix. */
export class Metrics {
  readonly registry = new Registry()
  private readonly duration = new Histogram({
    name: 'draughtbook_request_duration_seconds',
    help: 'Time from request to complete answer',
    labelNames: ['method', 'route', 'status'] as const,
    buckets: [0.001, 0.0025, 0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 2.5, 5, 10, 30],
    registers: [this.registry],
  })
  private readonly verdicts = new Counter({
    name: 'draughtbook_evaluations_total',
    help: 'Evaluations by outcome',
    labelNames: ['outcome'] as const,
    registers: [this.registry],
  })

  constructor({ inHand, waiting }: { inHand: () => number; waiting: () => number }) {
    collectDefaultMetrics({ register: this.registry })
    this.gauge('draughtbook_requests_in_hand', 'Requests being answered', inHand)
    this.gauge('draughtbook_tasks_waiting', 'Tasks waiting for a worker', waiting)
  }

  private gauge(name: string, help: string, value: () => number): void {
    new Gauge({
      name,
      help,
      registers: [this.registry],
      collect() {
        this.set(value())
      },
    })
  }

  readonly observe: RequestHandler = (request, response, next) => {
    const start = process.hrtime.bigint()
    response.once('close', () => {
      const status = response.writableFinished ? response.statusCode : 499
      this.duration.observe(
        { method: request.method, route: routeOf(response), status },
        Number(process.hrtime.bigint() - start) / 1e9,
      )
      const { outcome } = response.locals
      if (typeof outcome === 'string') this.verdicts.inc({ outcome })
    })
    next()
  }
}
