export { NextReading, nextReading, type Standing } from './next-reading.js'
export { estimateWhileReading, UnfinishedRequest } from './unfinished.js'
export { UnderWay, WhileReading, whileReading } from './while-reading.js'
