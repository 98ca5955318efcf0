export { deviceForRecord, entryName, gaugeForRecord, targetForRecord } from './copy.js'
export { Calibration, DEVICE_FORMAT, LibraryDevice } from './device.js'
export { GAUGE_FORMAT, LibraryGauge } from './gauge.js'
export { LibraryTarget, TARGET_FORMAT } from './target.js'
