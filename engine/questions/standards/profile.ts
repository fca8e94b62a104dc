/**
 * Each vehicle's section within the host's profile for its gauge, both on straight level track: what of it stands out, and what is left.
 * A vehicle of which only width and height are known is a box: within, it passes; a box that stands out is asked for its outline.
 */

import { type Polygon, type Room, roomIn, wholeFigure } from '../../base/numerics/polygon.ts';
import { amount } from '../../base/quantity.ts';
import type { OutingContext } from '../../outing/open.ts';
import type { Profile } from '../../outing/types.ts';
import type { Vehicle } from '../../things/vehicle/types.ts';
import type { Finding } from '../finding.ts';
import { makeFinding } from '../make.ts';

/** Gauges that are called the same, apart: 7-1/4 and 7-1/2 in are not. */
const SAME_GAUGE = 0.005;
/** Of lengths, m. */
const ROUNDING = 1e-9;

export interface SectionFit {
  readonly vehicle: string;
  readonly name: string;
  readonly profile: Profile;
  /** null: neither an outline nor width and height are measured. */
  readonly section: Polygon | null;
  readonly outlined: boolean;
  readonly room: Room | null;
}

const boxOf = ({ envelope }: Vehicle): Polygon | null => {
  if (!envelope) return null;
  const { width, height, underside = 0 } = envelope;
  return [
    { x: width / 2, y: underside },
    { x: width / 2, y: height },
    { x: -width / 2, y: height },
    { x: -width / 2, y: underside },
  ];
};

export const profileFor = (profiles: readonly Profile[], gauge: number): Profile | undefined =>
  profiles.find((p) => Math.abs(p.gauge - gauge) <= SAME_GAUGE * gauge);

export function lookAtSections({ outing }: OutingContext): SectionFit[] {
  const profiles = outing.host.profiles ?? [];
  return outing.train.vehicles.flatMap((vehicle): SectionFit[] => {
    const profile = profileFor(profiles, vehicle.gauge);
    if (!profile) return [];
    const section = vehicle.section ? wholeFigure(vehicle.section) : boxOf(vehicle);
    return [
      {
        vehicle: vehicle.id,
        name: vehicle.name,
        profile,
        section,
        outlined: vehicle.section !== undefined,
        room: section && roomIn(wholeFigure(profile.points), section),
      },
    ];
  });
}

export function outsideProfile(context: OutingContext): Finding[] {
  const all = lookAtSections(context);
  const out = (s: SectionFit): boolean => s.room !== null && s.room.left < -ROUNDING;
  const beyond = all.filter((s) => s.outlined && out(s));
  const lacking = all.filter((s) => s.room === null || (!s.outlined && out(s)));
  return [...refused(beyond), ...asked(lacking), ...otherGauges(context)];
}

function refused(of: readonly SectionFit[]): Finding[] {
  const known = of.flatMap((s) => (s.room ? [{ ...s, room: s.room }] : []));
  if (known.length === 0) return [];
  const worst = known.reduce((a, b) => (b.room.left < a.room.left ? b : a));
  return [
    makeFinding('outside-profile', 'forbids', 'host', {
      where: { vehicle: worst.vehicle },
      found: amount(-worst.room.left, 'length'),
      margin: -1,
      facts: {
        across: amount(Math.abs(worst.room.at.x), 'length'),
        height: amount(worst.room.at.y, 'length'),
        others: known.length - 1,
      },
      source: worst.profile.source,
    }),
  ];
}

function asked(of: readonly SectionFit[]): Finding[] {
  if (of.length === 0) return [];
  return [
    makeFinding('outline-not-measured', 'unknown', 'host', {
      where: { vehicle: of[0].vehicle },
      facts: { vehicles: [...new Set(of.map((s) => s.name))].join(', ') },
      measure: 'vehicle.section',
      source: of[0].profile.source,
    }),
  ];
}

/** The sheet has profiles, and none for the gauge of a vehicle: it says nothing of it. */
function otherGauges({ outing }: OutingContext): Finding[] {
  const profiles = outing.host.profiles ?? [];
  const odd = outing.train.vehicles.filter((v) => profiles.length > 0 && !profileFor(profiles, v.gauge));
  if (odd.length === 0) return [];
  return [
    makeFinding('no-profile-of-gauge', 'unknown', 'host', {
      where: { vehicle: odd[0].id },
      facts: { gauge: amount(odd[0].gauge, 'length'), others: odd.length - 1 },
      measure: 'host.profiles',
      source: profiles[0].source,
    }),
  ];
}
