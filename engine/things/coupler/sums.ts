/** Sums of couplers. */
import { input, notNegative, positive, result, type Sum } from '../../base/sum.ts';
import { endOffRail } from './crest.ts';
import { couplerAngle } from './formulas.ts';
import { pitchOnCurve } from './pitch.ts';
import { edgeApart } from './tilt.ts';

export const couplerSums: readonly Sum[] = [
  {
    id: 'end-off-rail',
    inputs: [
      input('truck-centres', 'length', notNegative),
      input('overhang', 'length', notNegative),
      input('radius', 'length', positive),
    ],
    results: [result('off', 'length')],
    equation: 'z = ((A/2 + o)^2 − (A/2)^2)/(2·R)',
    letters: 'z off, A truck-centres, o overhang, R radius',
    remark: 'R: of the crest or the sag',
    source: 'common engineering geometry (parabola)',
    compute: ({ 'truck-centres': centres, overhang, radius }) => [endOffRail(centres, overhang, radius)],
  },
  {
    id: 'pair-vertical-curve',
    inputs: [
      input('truck-centres', 'length', notNegative),
      input('overhang', 'length', notNegative),
      input('other-truck-centres', 'length', notNegative),
      input('other-overhang', 'length', notNegative),
      input('room', 'length', positive),
    ],
    results: [result('radius', 'length')],
    equation: 'R₁ = o₁·(A₁ + o₁)/(2·z);  R₂ = o₂·(A₂ + o₂)/(2·z);  R = max(R₁, R₂)',
    letters:
      'R radius, R₁ radius-of-the-one, R₂ radius-of-the-other, A₁ truck-centres, o₁ overhang, A₂ other-truck-centres, o₂ other-overhang, z room',
    remark:
      'z: how far the two may stand out of line; one of them may stand on straight track beside the curve',
    source: 'common engineering geometry (parabola)',
    compute: ({ room, ...given }) => [
      Math.max(
        ...['', 'other-'].map((of) => endOffRail(given[`${of}truck-centres`], given[`${of}overhang`], room)),
      ),
    ],
  },
  {
    id: 'bar-pitch',
    inputs: [
      input('radius', 'length', positive),
      input('truck-centres', 'length', notNegative),
      input('overhang', 'length'),
      input('shank', 'length', positive),
      input('other-truck-centres', 'length', notNegative),
      input('other-overhang', 'length'),
      input('other-shank', 'length', positive),
      input('higher', 'length', { default: 0 }),
    ],
    results: [result('angle', 'angle'), result('other-angle', 'angle')],
    equation:
      'β₁ = m₁/R + (q₁ − q₂ + Δ)/L;  β₂ = m₂/R + (q₂ − q₁ − Δ)/L;  m₁ = A₁/2 + o₁;  m₂ = A₂/2 + o₂;  q₁ = (o₁·(A₁ + o₁) − 2·m₁·h₁)/(2·R);  q₂ = (o₂·(A₂ + o₂) − 2·m₂·h₂)/(2·R);  L = h₁ + h₂',
    letters:
      'β₁ angle, β₂ other-angle, R radius, A₁ truck-centres, A₂ other-truck-centres, o₁ overhang, o₂ other-overhang, h₁ shank, h₂ other-shank, Δ higher, L length-of-the-bar, m₁ middle-to-the-end, m₂ other-middle-to-the-end, q₁ pin-off-the-rail, q₂ other-pin-off-the-rail',
    remark:
      'R: of the crest; β: downward from its own vehicle, below nothing upward; of a sag all turns round but Δ',
    source: 'common engineering geometry (parabola)',
    compute: ({ radius, higher, ...given }) => {
      const [own, other] = ['', 'other-'].map((of) => ({
        truckCentres: given[`${of}truck-centres`],
        overhang: given[`${of}overhang`],
        shank: given[`${of}shank`],
      }));
      return [pitchOnCurve(radius, own, other, higher), pitchOnCurve(radius, other, own, -higher)];
    },
  },
  {
    id: 'face-tilt',
    inputs: [
      input('twist', 'twist', notNegative),
      input('apart', 'length', positive),
      input('contact-width', 'length', positive),
      input('aside', 'length', { ...notNegative, default: 0 }),
      input('face', 'length', positive),
    ],
    results: [result('tilt', 'length')],
    equation: 't = g·D/w·(y + f/2)',
    letters: 't tilt, g twist, D apart, w contact-width, y aside, f face',
    remark: 'D: between the middles of the two vehicles; f: how wide the narrower face is',
    source: 'common engineering geometry',
    compute: ({ twist, apart, 'contact-width': width, aside, face }) => [
      edgeApart((twist * apart) / width, aside, face),
    ],
  },
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
      'β₁ = π/2 + atan(p₁/d₁) − acos((ρ₁² + L² − ρ₂²)/(2·ρ₁·L));  β₂ = π/2 + atan(p₂/d₂) − acos((ρ₂² + L² − ρ₁²)/(2·ρ₂·L));  d₁ = √(R² − A₁²/4);  d₂ = √(R² − A₂²/4);  p₁ = A₁/2 + o₁ − h₁;  p₂ = A₂/2 + o₂ − h₂;  ρ₁ = √(d₁² + p₁²);  ρ₂ = √(d₂² + p₂²);  L = h₁ + h₂',
    letters:
      'β₁ angle, β₂ other-angle, R radius, A₁ truck-centres, A₂ other-truck-centres, o₁ overhang, o₂ other-overhang, h₁ shank, h₂ other-shank, L length-of-the-bar, d₁ middle-from-the-centre, d₂ other-middle-from-the-centre, p₁ pivot-from-the-middle, p₂ other-pivot-from-the-middle, ρ₁ pivot-from-the-centre, ρ₂ other-pivot-from-the-centre',
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
