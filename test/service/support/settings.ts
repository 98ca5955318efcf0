import { defaultSettings, type Settings } from '../../../service/src/settings/settings'

/** Settings of a test: the defaults with a few changed. */
export const settings = (changed: Partial<Settings> = {}): Settings => ({ ...defaultSettings, ...changed })
