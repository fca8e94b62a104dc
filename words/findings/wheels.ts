/** Words for wheels on their track. */
import type { FindingOf } from '../../engine/questions/finding.ts';
import { others, type Tellers } from './teller.ts';

/** A check or face that nobody measured across the track. */
const byGap = (known: FindingOf<'wheel-strikes-frog'>['facts']['known']): string =>
  known === 'by gap'
    ? ' The track’s figure is its gauge less its gaps: measure it across the track itself.'
    : '';

const wornNames = {
  flangeThickness: 'a flange',
  flangeHeight: 'a flange height of',
  hollow: 'a tread hollow by',
} as const;

export const wheelWords = {
  'wheel-strikes-frog': (f, t) => ({
    what:
      f.severity === 'forbids'
        ? `${t.vehicle}, ${t.fact('wheelset')}: ${t.found('up')} over back and flange; the guard check at ${t.fact('place')} is ${t.required('down')}: the flange strikes the point of the frog.${others(f, 'the same')}`
        : `${t.vehicle}, ${t.fact('wheelset')}: ${t.found('up')} over back and flange, with little left of the guard check of ${t.required('down')} at ${t.fact('place')}.${others(f, 'as near')}`,
    why: `Back to back ${t.fact('back', 'up')} and a flange of ${t.fact('flange', 'up')}: the guard rail cannot hold the wheel off the point, and it climbs it or takes the wrong road.${byGap(f.facts.known)} Slower does not help.`,
  }),
  'wheelset-binds-at-guard': (f, t) => ({
    what:
      f.severity === 'forbids'
        ? `${t.vehicle}, ${t.fact('wheelset')}: ${t.found('down')} back to back; at ${t.fact('place')} guard rail and wing stand ${t.required('up')} apart: it binds there.${others(f, 'the same')}`
        : `${t.vehicle}, ${t.fact('wheelset')}: ${t.found('down')} back to back, little more than the ${t.required('up')} between guard rail and wing at ${t.fact('place')}.${others(f, 'as near')}`,
    why: `Wheels nearer together than the guarding faces jam between them, or ride up on them.${byGap(f.facts.known)} Slower does not help.`,
  }),
  'wheelset-binds-in-gauge': (f, t) => ({
    what: `${t.vehicle}, ${t.fact('wheelset')}: ${t.found('up')} over its flanges; the rails are ${t.required('down')} apart${f.facts.place === '' ? '' : ` at ${t.fact('place')}`}.${others(f, 'the same')}`,
    why: `Back to back ${t.fact('back', 'up')} and two flanges of ${t.fact('flange', 'up')}: it does not go between the rails but rides up on one.`,
  }),
  'wheel-drops-in': (f, t) => ({
    what:
      f.severity === 'forbids'
        ? `${t.vehicle}, ${t.fact('wheelset')}: with one flange against its rail the other wheel drops in, ${t.where.replace(/^.*?, /, '')}.${others(f, 'the same')}`
        : `${t.vehicle}, ${t.fact('wheelset')}: with one flange against its rail only ${t.found('down')} of the other tread lies on the rail, ${t.where.replace(/^.*?, /, '')}; ${t.required('up')} is wanted.${others(f, 'the same')}`,
    why: `${f.facts.widening.si > 0 ? `The gauge is ${t.fact('widening', 'up')} wide of the line’s there. ` : ''}Rails that give way under the train, and a worn rail head, take more off. Look there at the ties and spikes; a wider wheel or less gauge helps.`,
  }),
  'flange-strikes-floor': (f, t) => ({
    what:
      f.severity === 'forbids'
        ? `${t.vehicle}, ${t.fact('wheelset')}: its flange is ${t.found('up')} deep, the gap at ${t.fact('place')} ${t.required('down')}: it runs on its flange there.${others(f, 'the same')}`
        : `${t.vehicle}, ${t.fact('wheelset')}: its flange of ${t.found('up')} nearly touches the floor of the gap at ${t.fact('place')}, ${t.required('down')} deep.${others(f, 'as near')}`,
    why: 'A wheel lifted by its flange is guided by nothing. Clean the gap out and measure again; treads that wear hollow deepen the flange.',
  }),
  'back-to-back-varies': (f, t) => ({
    what: `${t.vehicle}, ${t.fact('wheelset')}: back to back varies by ${t.found('up')} round the wheels, from ${t.fact('least', 'down')} to ${t.fact('most', 'up')}; ${t.required('down')} is allowed.${others(f, 'the same')}`,
    why: 'The axle is bent, or a wheel sits aslant or works loose on it. Mark wheel and axle with one line of paint, and look at it after every run; take it out of the train where the line has parted.',
  }),
  'wheel-worn': (f, t) => ({
    what: `${t.vehicle}, ${t.fact('wheelset')}: ${wornNames[f.facts.of]} ${t.found(f.facts.of === 'flangeThickness' ? 'down' : 'up')}; worn out ${f.facts.of === 'flangeThickness' ? 'below' : 'above'} ${t.required()}.${others(f, 'the same')}`,
    why: 'A worn flange climbs sooner and picks the points, a hollow tread leads its wheel wrong and strikes frogs with its rim. Turn the wheels, or renew them.',
  }),
  'wheel-wears-out': (f, t) => ({
    what: `${t.vehicle}, ${t.fact('wheelset')}: ${wornNames[f.facts.of]} ${t.found(f.facts.of === 'flangeThickness' ? 'down' : 'up')} when it was read last; at ${t.fact('rate', 'up')} a year it has worn to ${t.required()} by the day of the outing.${others(f, 'the same')}`,
    why: 'Wear in proportion to days, by what was read on each: measure it anew before the outing.',
  }),
  'wheel-diameters-differ': (f, t) => ({
    what: `${t.vehicle}, ${t.fact('wheelset')}: its two wheels differ by ${t.found('up')} in diameter; ${t.required('down')} is allowed.${others(f, 'the same')}`,
    why: 'The larger runs ahead and presses the flange of the smaller to its rail: it wears, climbs sooner and drags. Turn both, or change the pair.',
  }),
  'frame-binds-in-curve': (f, t) => ({
    what:
      f.severity === 'forbids'
        ? `${t.vehicle}, ${t.fact('group')}: in the curve of ${t.fact('radius', 'down')} at ${t.at(f.where.from ?? 0)} its middle axle must stand ${t.found('up')} aside; play and widening give ${t.required('down')}: it binds or climbs.`
        : `${t.vehicle}, ${t.fact('group')}: in the curve of ${t.fact('radius', 'down')} at ${t.at(f.where.from ?? 0)} its middle axle must stand ${t.found('up')} aside, more than the play of usual flanges gives; nobody says how far it moves.`,
    why: `With ${t.fact('widening', 'up')} more of gauge there, of play of the middle axle, or with wheels without flanges on it, it goes round. State how far it moves, or the least radius that it is known to run.`,
  }),
  'wheels-aslant-bind': (f, t) => ({
    what:
      f.severity === 'forbids'
        ? `${t.vehicle}, ${t.fact('group')}: in the curve of ${t.fact('radius', 'down')} at ${t.at(f.where.from ?? 0)} its wheels stand so far aslant that they take ${t.found('up')} more between the rails; play and widening give ${t.required('down')}: they bind or climb.`
        : `${t.vehicle}, ${t.fact('group')}: in the curve of ${t.fact('radius', 'down')} at ${t.at(f.where.from ?? 0)} usual wheels would stand so far aslant that they take ${t.found('up')} more between the rails than straight ones; play and widening give ${t.required('down')}. Its own are not all measured.`,
    why: `With ${t.fact('widening', 'up')} more of gauge there, or lower or more sloping flanges, it goes round. Push it round by hand and look for light between flange and rail; or state the least radius that it is known to run.`,
  }),
  'wheels-not-measured': (f, t) =>
    f.facts.of === 'width'
      ? {
          what: `Nobody measured how wide the wheels of ${t.fact('vehicles')} are; ${t.where.replace(/^.*?, /, '')} they must be ${t.required('up')} wide.${
            f.severity === 'unknown'
              ? ` The narrowest that is published, ${t.fact('narrowest', 'down')}, drops between the rails there.`
              : f.severity === 'limits'
                ? ` The narrowest that is published, ${t.fact('narrowest', 'down')}, has too little on its rail there.`
                : ''
          }`,
          why: 'With one flange against its rail, enough of the other tread must still lie on its own. Measure from the back of a wheel to its outer face.',
        }
      : {
          what:
            f.severity === 'unknown'
              ? `The ${t.fact('of')} of ${t.fact('vehicles')} is not measured on every axle; the line states frogs or crossings that it must pass.`
              : `Nobody measured the wheels of ${t.fact('vehicles')}: whether they pass frogs and guard rails is not looked at.`,
          why: 'A wheelset within its sheet on track within its own can still strike a frog or bind: the pair decides.',
        },
  'flangeways-not-measured': (f, t) => ({
    what: `${f.facts.places === 1 ? 'The frog' : `The frogs at ${t.fact('places')} turnouts`} of this line ${f.facts.places === 1 ? 'is' : 'are'} not measured, ${t.where}: whether these wheels pass is not looked at.`,
    why: 'A host has a sheet or a gauge for it: ask, or measure across the track.',
  }),
} satisfies Partial<Tellers>;
