/** Packages that load native or optional parts of their own: they stay outside the bundle, and are installed beside it. */
export const OUTSIDE = ['bullmq', 'ioredis', 'piscina', 'pino', 'prom-client', 'multer']
