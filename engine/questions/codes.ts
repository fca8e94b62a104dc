/**
 * Every finding code, by room. Each has its words in `words/findings/`; a meta test holds both together.
 */
export const findingCodes = [
  // hauling and holding
  'cannot-start',
  'slow-on-grade',
  'traction-unknown',
  'does-not-hold',
  'holds-only-while-brake-is-tight',
  'no-parking-brake',
  // stopping and speed
  'cannot-stop',
  'runs-away',
  'brake-does-not-hold-fall',
  'speed-limited',
  'brake-force-unknown',
  'wheels-slide',
  'brake-kinds-do-not-work-together',
  'brake-pipe-broken',
  'vacuum-limited-by-air',
  'brake-not-worked-by-driver',
  'not-braked',
  'no-brake',
  // how the brakes fill, hold and fail
  'brake-slow-to-fill',
  'brake-slower-than-stated',
  'brake-slow-to-release',
  'brake-part-unknown',
  'reservoir-too-small',
  'brake-stronger-than-stated',
  'few-applications',
  'leaks-off-before-time',
  'leak-unknown',
  'brake-ratio-uneven',
  'slides-first',
  'brake-lost-with-hose',
  'supply-loss-unknown',
  // spacing
  'gap-needed',
  'flag-farther-than-rule',
  'flag-too-late',
  // host
  'gauge-differs',
  'too-many-cars',
  'too-many-riders',
  'too-many-riders-on-car',
  'too-many-riders-per-axle',
  'chains-missing',
  'too-few-cars-braked',
  'guard-missing',
  'lights-missing',
  'seat-too-high',
  'rider-too-young',
  // loads
  'car-overloaded',
  'axle-overloaded',
  'seat-overloaded',
  'rider-not-seated',
  'curve-too-tight',
  'grade-beyond-range',
  // balance
  'tips-at-rest',
  'stands-light-on-one-side',
  'curve-speed-limited-by-balance',
  'lean-small',
  'centre-of-gravity-unknown',
  'truck-lifts',
  'trucks-uneven',
  'truck-overloaded',
  'wheel-unloads-on-twist',
  'twist-unknown',
  'flange-may-climb',
  'flange-shape-unknown',
  // parting
  'tail-runs-away',
  'tail-rolls-back',
  'tail-stands',
  'head-unmanned',
  'parting-held-by-chains',
  'held-train-runs-away',
  'held-train-rolls-back',
  // single failures
  'failure-runs-away',
  'failure-rolls-back',
  'failure-stops-late',
  // chains and couplers
  'chain-too-weak',
  'chain-strength-unknown',
  'coupler-overloaded',
  'coupler-strength-unknown',
  'coupler-jerk-tips',
  // line
  'heights-poor',
  'sight-unknown',
  'train-longer-than-line',
  // assumptions
  'assumed',
  // a fault inside a question
  'question-failed',
] as const;

export type FindingCode = (typeof findingCodes)[number];
