/**
 * Phrases that a British engineer would not write, with the plain words beside each in the project's style list: none of
 * them may come back on a screen, in a finding, a workbook or the command's output.
 */
export const coinedPhrases: readonly RegExp[] = [
  /\breckon/i,
  /nothing to object to/i,
  /\bmend(s|ed|ing)?\b/i,
  /\banew\b/i,
  /\bstands? (beside|twice|in the way|first)\b/i,
  /\bbeside the\b/i,
  /\btells? of\b/i,
  /\btold of\b/i,
  /lies? off the line/i,
  /what you know of/i,
  /as the purpose of the test asks/i,
  /\b(is|it is) no (workbook|summary|number|unit|valid|key|certificate)\b/i,
  /\bof ours\b/i,
  /\bit only marks\b/i,
  /cannot be (said|judged)/i,
  /whether (one|it) reaches/i,
  /whether calibrations hold/i,
  /has not the sign/i,
  /beyond all measure/i,
  /\bsure to\b/i,
  /\bhow sure\b/i,
  /residuals left without/i,
  /fault of ours/i,
  /\bof No\./,
  /\bput right\b/i,
  /\bworked out anew\b/i,
  /\bwind holds\b/i,
  /\btake(n)? over as\b/i,
  /\bwhat is left to seal\b/i,
  /is judged (that|as|at|by)\b/i,
  /\bto mind\b/i,
  /\bto expect\b/i,
  /\bis asked\b/i,
  /\bit must lie\b/i,
  /\bworked out\b/i,
  /\bturned round\b/i,
  /\btaken? (off|over)\b/i,
  /\b(is|are) (asked|meant) for\b/i,
  /\bare flows of\b/i,
  /\bstands? (above|in) (its|the)\b/i,
  /\ball the same\b/i,
  /\bto be looked at\b/i,
  /\bto aim at\b/i,
  /\b(was|were) given up\b/i,
  /\bis none$/i,
  /\b(it|this|that|[^e]) is no (cell|range|date|time|field|JSON|register|Ed25519)\b/i,
  /\bno longer stands\b/i,
  /\bthat counts?:/i,
  /\bwandering\b/i,
  /\bin another order than\b/i,
  /\bname (it|one|one of them) with --/i,
  /\bgive one of \$?\{?each\b/i,
  /\bwas multiplied\b/i,
  /\bmust be one of\b/i,
]

/** Slips of form: a doubled word, a wrong article or plural, American spelling, a word of programmers. */
export const slips: readonly RegExp[] = [
  /(?<![-\w])(a|an|and|as|at|be|by|for|from|in|is|it|not|of|on|or|so|that|the|to|was|were|with) \1\b/i,
  /\ba (?!one|uni|use|eu)[aeiou][a-z]{2}/,
  /\ban [b-dfgj-np-tv-z][a-z]/,
  /\b1 ((more|earlier|other|zero-flow) )?(areas|cells|columns|devices|figures|homes|leaks|parts|photos|pressures|problems|ranges|readings|rows|samples|sheets|tests|values|workbooks)\b/,
  /\b(?!capsize|resize|oversize)[a-z]{3,}iz(e|es|ed|ing|ation)\b/,
  /\b(gray|labor|favor|behavior|catalog)\b/i,
  /\b(null|boolean|enum|regex|truthy|falsy)\b/i,
]

/** A figure printed equal to the limit it is said to pass: `50 Pa (at least 50 Pa needed)`. */
export const equalToLimit =
  /(?<![\d.])(\d+(?:\.\d+)?)(?= )(?:(?!\d)[^.(])*\((?:limit|at least|up to) ±?\1(?![\d.]\d|\d)/

/** A field's path in the record, such as `runs[0].readings[1].pressure_Pa`: for programs, not for people. */
export const fieldPath =
  /\w\[\d+\]|\b[a-z]+[A-Z]\w*_(Pa|m3|m2|m|C|K|s|h)\b|\b(building|conditions|flowDevice|test)\.[a-z]/
