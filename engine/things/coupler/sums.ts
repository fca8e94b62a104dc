/** Sums of couplers. */
import { input, notNegative, positive, result, type Sum } from '../../base/sum.ts';
import { couplerAngle } from './formulas.ts';

export const couplerSums: readonly Sum[] = [
  {
    id: 'coupler-angle',
    inputs: [
      input('radius', 'length', positive),
      input('truck-centres', 'length', notNegative),
      input('overhang', 'length'),
      input('shank', 'length', positive),
      input('other-truck-centres', 'length', notNegative),
      input('other-overhang', 'length'),
      input('other-shank', 'length', positive),
    ],
    results: [result('angle', 'angle'), result('other-angle', 'angle')],
    equation:
      'β₁ = 90° + atan(p₁/d₁) − acos((ρ₁² + L² − ρ₂²)/(2·ρ₁·L));  d = √(R² − A²/4), p = A/2 + o − h, ρ² = d² + p², L = h₁ + h₂',
    source: 'common engineering geometry',
    compute: (given) => {
      const radius = given['radius'];
      const [own, other] = ['', 'other-'].map((of) => ({
        truckCentres: given[`${of}truck-centres`],
        overhang: given[`${of}overhang`],
        shank: given[`${of}shank`],
      }));
      if (2 * radius <= Math.max(own.truckCentres, other.truckCentres))
        return { symbol: 'radius', found: `${radius}`, expected: 'more than half the truck centres' };
      const angles = [couplerAngle(radius, own, other), couplerAngle(radius, other, own)];
      return angles.every(Number.isFinite)
        ? angles
        : { symbol: 'shank', found: `${own.shank}`, expected: 'couplers that reach from pivot to pivot' };
    },
  },
];
