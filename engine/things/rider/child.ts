/**
 * Weight of children by age: the LMS parameters of the CDC 2000 growth charts.
 *
 * Source: US National Center for Health Statistics, CDC Growth Charts 2000, weight-for-age 2 to 20 years,
 * data file `wtage` (public domain), every twelfth row. L, M, S between rows are linear in age; at months
 * between the rows this is within 0.5 % of the printed percentiles.
 */
import { normalDeviate } from '../../base/numerics/normal.ts';

type Row = readonly [age: number, l: number, m: number, s: number];

/** Age in months, Box-Cox power L, median M in kg, coefficient of variation S. */
const boys: readonly Row[] = [
  [24.5, -0.216501213, 12.74154396, 0.108166006],
  [36.5, -0.621319726, 14.40262749, 0.111874514],
  [48.5, -0.915241589, 16.31676727, 0.11995532],
  [60.5, -1.000453886, 18.48592413, 0.129879257],
  [72.5, -1.087471249, 20.77769565, 0.139142773],
  [84.5, -1.236497304, 23.16741888, 0.147337375],
  [96.5, -1.351813296, 25.75256528, 0.155973912],
  [108.5, -1.339405453, 28.68130005, 0.166659247],
  [120.5, -1.206688407, 32.08799062, 0.17892874],
  [132.5, -1.019277299, 36.07262569, 0.190029545],
  [144.5, -0.836961905, 40.67443658, 0.196591612],
  [156.5, -0.698166437, 45.81336172, 0.196662115],
  [168.5, -0.631876912, 51.23096332, 0.190808471],
  [180.5, -0.665609025, 56.49095862, 0.181665781],
  [192.5, -0.801993069, 61.09536847, 0.172459052],
  [204.5, -0.973244762, 64.69961427, 0.16564009],
  [216.5, -1.066224038, 67.28992603, 0.161922819],
];

const girls: readonly Row[] = [
  [24.5, -0.75220657, 12.13455523, 0.107740345],
  [36.5, -1.024471278, 13.94108332, 0.119491669],
  [48.5, -1.177029925, 15.87823668, 0.131802186],
  [60.5, -1.287691525, 18.02313904, 0.141190842],
  [72.5, -1.326763834, 20.33635961, 0.149589838],
  [84.5, -1.265548787, 22.86804258, 0.159693163],
  [96.5, -1.127684095, 25.7570168, 0.172147043],
  [108.5, -0.970685789, 29.14291171, 0.185201039],
  [120.5, -0.846872805, 33.06392318, 0.195947008],
  [132.5, -0.787374433, 37.39088668, 0.201971282],
  [144.5, -0.807599577, 41.82797963, 0.202298783],
  [156.5, -0.915513542, 45.98368656, 0.197363191],
  [168.5, -1.111606122, 49.49075409, 0.188559804],
  [180.5, -1.376478254, 52.13568193, 0.177946804],
  [192.5, -1.651248208, 53.94543725, 0.168124538],
  [204.5, -1.838091576, 55.18216811, 0.161752634],
  [216.5, -1.850946286, 56.22969564, 0.16036959],
];

export type Sex = 'boy' | 'girl';

/** First and last age of the table, months. */
export const CHILD_AGES = { low: 24.5, high: 216.5 } as const;

function rowAt(rows: readonly Row[], age: number): Row {
  const above = Math.max(
    1,
    rows.findIndex((row) => row[0] >= age),
  );
  const [from, to] = [rows[above - 1]!, rows[above]!];
  const share = (age - from[0]) / (to[0] - from[0]);
  const mix = (column: 1 | 2 | 3) => from[column] + share * (to[column] - from[column]);
  return [age, mix(1), mix(2), mix(3)];
}

/**
 * Weight of a child at a percentile, kg: M·(1 + L·S·z)^(1/L), z the normal deviate of the percentile.
 *
 * age months, 24.5 to 216.5 · sex · percentile as a share, 0.01 to 0.99. US children of about 1963–1994:
 * children of today are heavier at the upper percentiles. Source: CDC 2000 (above); Cole's LMS method.
 */
export function childWeight(age: number, sex: Sex, percentile: number): number {
  const [, l, m, s] = rowAt(sex === 'boy' ? boys : girls, age);
  return m * (1 + l * s * normalDeviate(percentile)) ** (1 / l);
}
