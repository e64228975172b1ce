export { betterDelivery, type BetterDelivery, chanceOfDifference } from './better-delivery.ts';
export type { Basis, Interval, Standing } from './basis.ts';
export {
  CODE_LETTERS,
  codeLetter,
  sampleSizeOf,
  type CodeLetter,
  type CodeLetterResult,
  type InspectionLevel
} from './code-letter.ts';
export {
  ATTRIBUTES_AQLS,
  attributesPlan,
  type AttributesAql,
  type AttributesPlan,
  type AttributesPlanResult,
  type Severity,
  type TabulatedPlan
} from './attributes-plan.ts';
export {
  atLeast,
  atMost,
  binomial,
  hypergeometric,
  type CountDistribution
} from './count-distribution.ts';
export {
  acceptance,
  acceptanceInLot,
  operatingCurve,
  planRisks,
  type OperatingPoint,
  type PlanRisks
} from './operating-characteristic.ts';
export { findAttributesPlan, type RiskPoint } from './plan-finder.ts';
export {
  VARIABLES_AQLS,
  acceptabilityFrom,
  roundedIndex,
  variablesPlan,
  type VariablesAql,
  type VariablesLetter,
  type VariablesPlan,
  type VariablesPlanResult
} from './variables-plan.ts';
export {
  estimateShareOutside,
  judgeByVariables,
  largestAcceptableSd,
  shareBeyond,
  type Limits,
  type ShareOutside,
  type VariablesJudgement
} from './variables-judgement.ts';
export {
  allowedShareFrom,
  findVariablesPlan,
  variablesAcceptance,
  type OneLimitPlan,
  type SdKnowledge
} from './variables-operating-characteristic.ts';
export { noncentralTAbove, noncentralTCdf, noncentralTQuantile } from './noncentral-t.ts';
export { clopperPearson } from './proportion-intervals.ts';
export {
  countInLot,
  shareStandardError,
  type LotSample,
  type LotSampleRefusal
} from './finite-lot.ts';
export {
  customaryLimits,
  edgeLimitMm,
  flatnessLimitMm,
  productLimits,
  thicknessBand,
  type AgreedLimit,
  type AgreedLimits,
  type CustomaryLimit,
  type DeliveryOrder,
  type MeasuredCheck,
  type OrderRefusal,
  type ProductLimits,
  type Texture,
  type ToleranceLimit
} from './product-tolerances.ts';
export {
  SLATE_CHECKS,
  checkSlate,
  isCertain,
  isUsable,
  slateOutcome,
  slateThicknessMm,
  type MeasuredSlate,
  type SlateCheck,
  type SlateCheckName
} from './slate-conformity.ts';
export { type LayersAlike, layersAlike } from './layers-alike.ts';
export {
  drawFullChecks,
  drawSamplingList,
  type PalletToSample,
  type PlacesFrom,
  type SamplePlace,
  type SamplingListResult
} from './sampling-list.ts';
export {
  checkCount,
  checkStack,
  type CountComparison,
  type MeasuredStack,
  type StackCheckResult,
  type StackComparison
} from './stack-check.ts';
export {
  sampleEvidence,
  thicknessInsideOrder,
  type JudgedSlate,
  type SampleEvidence
} from './sample-evidence.ts';
export {
  acceptanceNumberFor,
  planCurve,
  planForSize,
  withRisks,
  type JudgingPlan,
  type PlanWithRisks,
  type ThicknessPlan
} from './judging-plan.ts';
export {
  judgeByAttributes,
  type AttributesJudgement,
  type CheckFinding,
  type DefectFinding,
  type OutsideOrderFinding
} from './finding-outside-order.ts';
export type {
  PredictedEvenness,
  SortingFigure,
  SortingFinding,
  SortingTerms
} from './finding-sorting.ts';
export type { RoofFinding, RoofNeed, RoofAnswer } from './finding-roof.ts';
export {
  compareJudgedPallets,
  type PalletFinding,
  type PalletsCompared
} from './pallets-compared.ts';
export {
  findAll,
  type DeliveryEvidence,
  type DeliveryFindings,
  type FindingsResult
} from './findings.ts';
export {
  judgeDelivery,
  type DeliveryVerdict,
  type Verdict,
  type VerdictReason,
  type VerdictReasonCode,
  type WouldChange
} from './verdict.ts';
export { findSoFar, type SampleSoFar } from './sample-so-far.ts';
export { judgeSoFar, type ListMeasured } from './verdict-so-far.ts';
export {
  costOfChoices,
  type ChoiceCost,
  type ChoiceTerms,
  type CostFigure,
  type CostPart,
  type CostPartCode,
  type UnknownCostPart
} from './cost-of-choices.ts';
export {
  LIMIT_WIDTH,
  palletMeansChart,
  type ChartPoint,
  type ControlChart,
  type PalletSummary
} from './control-chart.ts';
export {
  compareDeliveries,
  type ComparedDelivery,
  type ComparedSupplier,
  type DeliverySummary
} from './deliveries-compared.ts';
export { claimClock, type ClaimClock } from './claim-clock.ts';
