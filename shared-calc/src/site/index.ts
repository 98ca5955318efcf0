export { type NextReading, nextReading, type Standing } from './next-reading.js'
export { type UnderWay, type WhileReading, whileReading } from './while-reading.js'
