/**
 * What a published limit can be about: the closed vocabulary that rule sets, findings and the
 * railroad's own limits share. `compare` says whether the limit is held against the value as it
 * stands or against its magnitude (a deviation to either side condemns).
 */
type RuleQuantity = {
  readonly name: string;
  readonly about: 'track' | 'turnout' | 'wheel' | 'truck';
  readonly unit: 'mm' | 'count';
  readonly compare: 'value' | 'magnitude';
};

const length = (
  about: RuleQuantity['about'],
  name: string,
  compare: RuleQuantity['compare'] = 'value',
): RuleQuantity => ({ name, about, unit: 'mm', compare });

const TRACK = {
  gauge: length('track', 'Gauge'),
  gaugeUnderLoad: length('track', 'Gauge with movement under load added'),
  alinement62: length('track', 'Alinement, deviation from uniform, 62-ft chord', 'magnitude'),
  alinement31: length('track', 'Alinement, deviation from uniform, 31-ft chord', 'magnitude'),
  profile62: length('track', 'Profile, deviation from uniform, 62-ft chord', 'magnitude'),
  profile31: length('track', 'Profile, deviation from uniform, 31-ft chord', 'magnitude'),
  runoff31: length('track', 'Runoff in 31 ft at the end of a raise', 'magnitude'),
  crosslevelTangent: length('track', 'Crosslevel, deviation from zero', 'magnitude'),
  crosslevelReverseOnCurve: length('track', 'Reverse elevation (outer rail low)'),
  crosslevelDifference62: length(
    'track',
    'Crosslevel difference of two points less than 62 ft apart',
    'magnitude',
  ),
  crosslevelDifference10: length(
    'track',
    'Crosslevel difference of two points less than 10 ft apart',
    'magnitude',
  ),
  crosslevelDifferenceHigh62: length(
    'track',
    'Crosslevel difference within 62 ft of a point with 6 in of elevation or more',
    'magnitude',
  ),
  spiralVariation31: length('track', 'Crosslevel variation on a spiral per 31 ft', 'magnitude'),
  staggeredJoints: length('track', 'Smallest of six consecutive crosslevel differences at staggered joints'),
  elevationMax: length('track', 'Elevation of the outer rail'),
  railEndMismatchTread: length('track', 'Rail end mismatch on the tread'),
  railEndMismatchGauge: length('track', 'Rail end mismatch on the gauge side'),
  tiesPer39ft: { name: 'Sound crossties in 39 ft', about: 'track', unit: 'count', compare: 'value' },
  placardedCars: { name: 'Placarded cars in the train', about: 'track', unit: 'count', compare: 'value' },
  twist3m: length('track', 'Twist over its base', 'magnitude'),
  alignmentD1: length('track', 'Alignment, wavelengths 3 to 25 m, mean to peak', 'magnitude'),
  longitudinalLevelD1: length(
    'track',
    'Longitudinal level, wavelengths 3 to 25 m, mean to peak',
    'magnitude',
  ),
} as const satisfies Record<string, RuleQuantity>;

const TURNOUT = {
  guardCheckGauge: length('turnout', 'Guard check gauge'),
  guardFaceGauge: length('turnout', 'Guard face gauge'),
  flangewayDepth: length('turnout', 'Flangeway depth at the frog'),
  flangewayWidth: length('turnout', 'Flangeway width'),
  frogPointDown: length('turnout', 'Frog point chipped, broken or worn down'),
  frogTreadWear: length('turnout', 'Tread of the frog casting worn below its contour'),
  springFrogHorn: length('turnout', 'Spring rail frog, clearance of hold-down housing and horn'),
  raisedGuardWear: length('turnout', 'Self-guarded frog, raised guard worn'),
} as const satisfies Record<string, RuleQuantity>;

const EQUIPMENT = {
  flangeThickness: length('wheel', 'Flange thickness 3/8 in above the tread'),
  flangeHeight: length('wheel', 'Flange height above the tread'),
  rimThickness: length('wheel', 'Rim thickness'),
  treadHollow: length('wheel', 'Tread worn hollow'),
  flatSpot: length('wheel', 'Flat spot, length'),
  flatSpotAdjoining: length('wheel', 'Shorter of two adjoining flat spots, length'),
  shelledSpot: length('wheel', 'Shelled spot, length'),
  shelledSpotAdjoining: length('wheel', 'Shorter of two adjoining shelled spots, length'),
  flangeChipLength: length('wheel', 'Chip or gouge in the flange, length'),
  brokenRimTread: length('wheel', 'Tread left at a broken rim, from the flange 5/8 in above the tread'),
  diameterDifference: length('wheel', 'Difference of diameter on one axle', 'magnitude'),
  backToBack: length('wheel', 'Back-to-back distance'),
  backToBackVariation: length('wheel', 'Variation of back-to-back on one axle'),
  sideBearingClearanceEnd: length('truck', 'Side-bearing clearance, both sides of one end together'),
  sideBearingClearanceDiagonal: length('truck', 'Side-bearing clearance, diagonally opposite sides together'),
} as const satisfies Record<string, RuleQuantity>;

export const RULE_QUANTITIES = { ...TRACK, ...TURNOUT, ...EQUIPMENT };

export type RuleQuantityId = keyof typeof RULE_QUANTITIES;

export const RULE_QUANTITY_IDS = Object.keys(RULE_QUANTITIES) as readonly RuleQuantityId[];

export const isRuleQuantityId = (text: string): text is RuleQuantityId =>
  Object.hasOwn(RULE_QUANTITIES, text);
