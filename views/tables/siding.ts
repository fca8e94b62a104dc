/** The tracks of a line as tables, the same on the screen and in the terminal. */
import { nameOfTrack, type Road, type Sidings, type Standing, usableOf } from '../../desk/siding.ts';
import { crossingOf, numberOfFrog } from '../../engine/things/line/turnout.ts';
import type { Joint } from '../../engine/things/line/types.ts';
import { tape } from '../../words/calliper.ts';
import { unmeasuredWords } from '../../words/not-told.ts';
import type { WordTable } from '../../words/table.ts';
import { chainage, say, type Voice } from '../../words/voice.ts';

const length = (voice: Voice, si: number, toward: 'up' | 'down' | 'nearest' = 'nearest'): string =>
  say(voice, { si, kind: 'length' }, toward);

/** The track, or what runs beside it. */
const roadName = ({ line }: Sidings, { track, stands }: Road): string =>
  stands === 'in' ? track.name : `${nameOfTrack(line, track.start.track)}, beside ${track.name}`;

function roadRow(sidings: Sidings, road: Road, train: Standing, voice: Voice): string[] {
  const name = roadName(sidings, road);
  if (!road.clear) return [name, 'does not fit', 'nowhere', '', '', ''];
  const usable = usableOf(road);
  const [first, last] = road.marks;
  return [
    name,
    `${length(voice, train.length, 'up')}: ${usable >= train.length ? 'fits' : 'does not fit'}`,
    length(voice, usable, 'down'),
    tape(first.beyondFrog, voice, 'up'),
    tape(first.apart, voice, 'up'),
    last ? tape(last.beyondFrog, voice, 'up') : 'to its end',
  ];
}

/** Where a train must stand beyond, road by road. */
export const roadsTable = (sidings: Sidings, train: Standing, voice: Voice): WordTable => ({
  title: `Where ${train.train} stands clear while ${train.passes === train.train ? 'another like it' : train.passes} passes`,
  head: ['road', 'this train', 'usable', 'beyond the frog', 'tracks apart there', 'short of the last frog'],
  rows: [
    ...train.look.roads.map((road) => roadRow(sidings, road, train, voice)),
    ...train.look.untold.map(({ track, lacks }) => [track.name, 'cannot tell', lackWords(lacks), '', '', '']),
  ],
  note: noteOf(train, voice),
});

const lackWords = (lacks: Joint['lacks']): string =>
  lacks === 'lead'
    ? 'measure the lead'
    : lacks === 'frogNumber'
      ? 'measure the frog'
      : 'a frame cannot stand there';

function noteOf({ look }: Standing, voice: Voice): string {
  const { without, margin } = look;
  if (without.length > 0) return `Cannot tell. ${unmeasuredWords(without, voice)}`;
  return `From the point of the frog, paced along the road; or where the middles of the tracks lie so far apart: from rail to the same rail. No end nearer. Whichever way round the vehicles stand, wheels hard over in their play, ${length(voice, margin.value, 'up')} between the two (${margin.source}). Against the track that a road leaves and all others of the line that come near, those whose points are not measured left out.`;
}

/** How near two trains come where both stand clear. */
export const passingTable = (sidings: Sidings, train: Standing, voice: Voice): WordTable => ({
  title:
    'Where one passes the other: the least room between them, this train midway between its marks or at the end of the road',
  head: ['road', 'least room', 'beyond the points', 'stands', 'passes'],
  rows: train.look.roads
    .filter((road) => road.stands === 'in')
    .flatMap((road) =>
      [road.pinch, road.least].flatMap((at) =>
        at === null
          ? []
          : [
              [
                roadName(sidings, road),
                at.passes === '' ? 'out of reach' : at.room < 0 ? 'strikes' : length(voice, at.room, 'down'),
                length(voice, at.at),
                at.stands,
                at.passes === '' ? '—' : at.on === undefined ? at.passes : `${at.passes}, on ${at.on}`,
              ],
            ],
      ),
    ),
  note: 'Play, throw and lean of canted track taken off; people who lean out and sway on springs are not. Slower does not help: hold one back, or keep the wider vehicle off.',
});

/** Each turnout with what follows from frog and lead. */
export const turnoutsTable = ({ joints, line }: Sidings, voice: Voice): WordTable => ({
  title: 'Turnouts, from what was measured',
  head: ['of', 'on', 'tips at', 'hand', 'points', 'frog', 'lead', 'radius', 'by versine', 'crossing to frog'],
  rows: joints.map(({ track, joint, on }) => {
    const { turnout, held } = joint;
    const place = [
      track.name,
      on,
      chainage(voice, joint.at),
      joint.hand,
      joint.facing ? 'facing' : 'trailing',
    ];
    if (!turnout) return [...place, lackWords(joint.lacks), '—', '—', '—', '—'];
    return [
      ...place,
      `no. ${Number(numberOfFrog(turnout.angle).toFixed(2))}`,
      length(voice, turnout.lead),
      length(voice, turnout.radius, 'down'),
      held === undefined ? '—' : length(voice, held),
      length(voice, turnout.lead - crossingOf(turnout, line.gauge)),
    ];
  }),
  note: 'Hand as seen from the tips toward the frog. Radius of the middle of the diverging track beyond the curve that it leaves. The middles of two tracks cross gauge × number before the frog.',
});

/** What clears it; none where this train stands clear everywhere. */
export const waysTables = ({ ways }: Sidings): WordTable[] =>
  ways.length === 0
    ? []
    : [
        {
          title: 'What clears it, each tried on both trains',
          head: ['road', 'lacks', 'leave behind', 'or take'],
          rows: ways.map(({ road, lacks, leave, others }) => [
            road,
            lacks,
            leave.length > 0 ? leave.join(', ') : 'nothing that was tried clears it',
            others.length > 0 ? others.join(', ') : 'no other road clears it as it is',
          ]),
          note: 'Cars from the rear, the fewest; of two that come too near, those. A road that it does not fit is left by whoever is longer: hold it where it does.',
        },
      ];
