/** Whether a finding was made while a log or photos were read: it cannot be made again from the record alone. */
export const isMadeOutsideRecord = (rule: string): boolean => /^(log|photo)-/.test(rule)
