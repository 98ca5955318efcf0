export { askedOf, type ListedOpening, type PreparationMethod, preparationList } from './asks.js'
export { allCautions, CAUTIONS_DEFER, cautionTexts } from './cautions.js'
export { type CheckedOpening, checkPreparation } from './check.js'
