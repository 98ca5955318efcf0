/**
 * Packages that load native or optional parts of their own, or are files that are read: they stay outside the bundle, and are
 * installed beside it.
 */
export const OUTSIDE = ['bullmq', 'dejavu-fonts-ttf', 'ioredis', 'piscina', 'pino', 'prom-client', 'multer']
