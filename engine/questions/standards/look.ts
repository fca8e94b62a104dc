/** Every vehicle of a train against a host's sheet: what was measured, what is refused, what must run slowly. */
import { GRAVITY } from '../../base/constants.ts';
import type { OutingContext } from '../../outing/open.ts';
import {
  type Outing,
  type Standard,
  type StandardKey,
  type Standards,
  standardKeys,
} from '../../outing/types.ts';
import { swingOf } from '../../things/coupler/train-bends.ts';
import type { LoadedVehicle } from '../../things/train/loaded.ts';
import type { Coupling, Vehicle } from '../../things/vehicle/types.ts';
import { backsOf } from '../../things/wheel/pair.ts';
import type { Wheelset } from '../../things/wheel/types.ts';
import { lookAtCrests } from '../crests/look.ts';
import { sinksOf } from '../crests/sinks.ts';

/** One figure of a vehicle, from the least to the most of its readings; SI. */
export interface Reading {
  readonly vehicle: string;
  readonly name: string;
  /** Name of the wheelset; empty for other figures. */
  readonly wheelset: string;
  readonly end: 'front' | 'rear' | '';
  readonly low: number;
  readonly high: number;
}

/** refused, slow: the reading against the bound that it passes; `left` less than nothing by how much. */
export interface Judged {
  readonly reading: Reading;
  readonly word: 'accepted' | 'slow' | 'refused';
  readonly found: number;
  readonly bound: number;
  readonly side: 'least' | 'most';
  readonly left: number;
}

export interface Compared {
  readonly key: StandardKey;
  readonly standard: Standard;
  readonly judged: readonly Judged[];
  /** Vehicles that lack the figure. */
  readonly without: readonly Vehicle[];
}

/** Rounding of sums, of the figure's own unit. */
const ROUNDING = 1e-9;

export function lookAtStandards(context: OutingContext): Compared[] {
  const { loaded, outing } = context;
  const standards: Standards = outing.host.standards ?? {};
  return standardKeys.flatMap((key): Compared[] => {
    const standard = standards[key];
    if (!standard) return [];
    if (key === 'trainLength') {
      const whole = {
        vehicle: loaded.vehicles[0].vehicle.id,
        name: 'the train',
        wheelset: '',
        end: '' as const,
      };
      return [
        {
          key,
          standard,
          judged: judge({ ...whole, low: loaded.length, high: loaded.length }, standard),
          without: [],
        },
      ];
    }
    const read =
      key === 'couplerHold'
        ? heldBy(context)
        : loaded.vehicles.map((v) => ({ of: v.vehicle, readings: readers[key](v, outing) }));
    return [
      {
        key,
        standard,
        judged: read.flatMap(({ readings }) => (readings ?? []).flatMap((r) => judge(r, standard))),
        without: read.flatMap(({ of, readings }) => (readings ? [] : [of])),
      },
    ];
  });
}

/** The bound that it passes farthest; where it passes none, the nearest. */
function judge(reading: Reading, standard: Standard): Judged[] {
  const { least, most, slowBelow, slowAbove } = standard;
  const against = (bound: number | undefined, side: Judged['side'], word: Judged['word']): Judged[] => {
    if (bound === undefined) return [];
    const found = side === 'least' ? reading.low : reading.high;
    const left = side === 'least' ? found - bound : bound - found;
    return [{ reading, word: left < -ROUNDING ? word : 'accepted', found, bound, side, left }];
  };
  const all = [
    ...against(least, 'least', 'refused'),
    ...against(most, 'most', 'refused'),
    ...against(slowBelow, 'least', 'slow'),
    ...against(slowAbove, 'most', 'slow'),
  ];
  const rank = ({ word }: Judged): number => ['refused', 'slow', 'accepted'].indexOf(word);
  const [worst] = [...all].sort((a, b) => rank(a) - rank(b) || a.left - b.left);
  return worst ? [worst] : [];
}

type Reader = (of: LoadedVehicle, outing: Outing) => readonly Reading[] | undefined;

const of = ({ vehicle }: LoadedVehicle, low: number, high = low): Reading => ({
  vehicle: vehicle.id,
  name: vehicle.name,
  wheelset: '',
  end: '',
  low,
  high,
});

/** Of every axle; undefined unless each was measured. */
const ofAxles =
  (read: (wheelset: Wheelset) => readonly [number, number] | undefined): Reader =>
  (v) => {
    const { wheelsets = [], groups } = v.vehicle;
    const found = wheelsets.flatMap((w) => {
      const figures = read(w);
      return figures ? [{ ...of(v, figures[0], figures[1]), wheelset: w.name }] : [];
    });
    return found.length < groups.reduce((sum, g) => sum + g.axles, 0) ? undefined : found;
  };

const ofOne =
  (read: (vehicle: Vehicle) => number | undefined): Reader =>
  (v) => {
    const figure = read(v.vehicle);
    return figure === undefined ? undefined : [of(v, figure)];
  };

/** Of both ends; undefined unless each was measured. */
const ofEnds =
  (read: (coupling: Coupling, end: 'front' | 'rear') => readonly [number, number] | undefined): Reader =>
  (v) => {
    const ends = (['front', 'rear'] as const).flatMap((end) => {
      const figures = read(v.vehicle[end], end);
      return figures ? [{ ...of(v, figures[0], figures[1]), end }] : [];
    });
    return ends.length < 2 ? undefined : ends;
  };

/** What of the faces holds at each gap over the line; links and bars have none. */
function heldBy(context: OutingContext): { of: Vehicle; readings: readonly Reading[] | undefined }[] {
  const { vehicles } = context.loaded;
  return lookAtCrests(context).map(({ gap, hold, stated }) => {
    const ahead = vehicles[gap];
    return {
      of: ahead.vehicle,
      readings: hold && stated !== null ? [{ ...of(ahead, hold.held), end: 'rear' as const }] : undefined,
    };
  });
}

const readers: Readonly<Record<Exclude<StandardKey, 'trainLength' | 'couplerHold'>, Reader>> = {
  backToBack: ofAxles((w) => {
    const backs = backsOf(w);
    return backs && [backs.least, backs.most];
  }),
  backVariation: ofAxles((w) => {
    const backs = backsOf(w);
    return backs && (w.backToBack ?? []).length > 1
      ? [backs.most - backs.least, backs.most - backs.least]
      : undefined;
  }),
  wheelCheck: ofAxles((w) => {
    const backs = backsOf(w);
    return backs && w.flangeThickness
      ? [backs.least + w.flangeThickness.low, backs.most + w.flangeThickness.high]
      : undefined;
  }),
  flangeThickness: ofAxles((w) => w.flangeThickness && [w.flangeThickness.low, w.flangeThickness.high]),
  flangeHeight: ofAxles((w) => (w.flangeHeight === undefined ? undefined : [w.flangeHeight, w.flangeHeight])),
  treadHollow: ofAxles((w) => (w.hollow === undefined ? undefined : [w.hollow, w.hollow])),
  wheelWidth: ofAxles((w) => (w.width === undefined ? undefined : [w.width, w.width])),
  flangeAngle: ofOne((v) => v.flange?.angle),
  treadTaper: ofAxles((w) => (w.taper === undefined ? undefined : [w.taper, w.taper])),
  couplerHeight: ofEnds(({ height }) => (height === undefined ? undefined : [height, height])),
  couplerHeightLoaded: (v, outing) => {
    const heaviest = Math.max(0, ...outing.riders.map((r) => r.mass.high));
    return ofEnds(({ height }, end) => {
      const { seated, unknown } = sinksOf(v, end, heaviest);
      return height === undefined || unknown
        ? undefined
        : [height - Math.max(...seated), height - Math.min(...seated)];
    })(v, outing);
  },
  couplerSwing: ofEnds((coupling) => {
    const swing = swingOf(coupling);
    return swing === undefined ? undefined : [swing, swing];
  }),
  bodyWidth: ofOne((v) => v.envelope?.width),
  bodyHeight: ofOne((v) => v.envelope?.height),
  vehicleLength: ofOne((v) => v.length),
  axleLoad: (v) =>
    v.vehicle.groups.length === 0
      ? undefined
      : [of(v, Math.max(...v.vehicle.groups.map((g, i) => v.groupLoads[i] / g.axles)) / GRAVITY)],
  leastRadius: ofOne((v) => v.ratings.leastRadius),
};

/** No faster than what the sheet allows of the worst in the train; undefined: nothing runs slowly by it. */
export function slowestByStandards(
  context: OutingContext,
): { readonly speed: number; readonly what: string; readonly source: string } | undefined {
  const slow = lookAtStandards(context).flatMap(({ judged, standard: { slowSpeed, source } }) =>
    judged
      .filter(({ word }) => word === 'slow' && slowSpeed !== undefined)
      .map(({ reading }) => ({ speed: slowSpeed as number, what: reading.name, source })),
  );
  return slow.length === 0 ? undefined : slow.reduce((a, b) => (b.speed < a.speed ? b : a));
}
