/** Choices of the plan that no standard makes. Source of all: common practice, no source. */

/** Exponents between which most buildings lie; flows are shown for the ends and for the usual value, Pa^n. */
export const EXPECTED_EXPONENTS = [0.55, 0.65, 0.75] as const

/** How far the highest pressure to set lies above the one the method needs, Pa: clear of it, kind to linings. */
export const ABOVE_NEEDED_PA = 10

/** Margin above the lowest pressure that the method allows, Pa, as readings waver around what was set. */
export const MARGIN_PA = 2

/** Readings to plan for beyond the method's least number, so that one may be lost. */
export const SPARE_READINGS = 2
