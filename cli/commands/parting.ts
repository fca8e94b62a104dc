/** heedway parting: what becomes of head and tail if the train parts, gap by gap, or one parting in time. */
import {
  openPartings,
  type PartingLook,
  type PartingPlay,
  type PlayAsk,
  stretchesOf,
} from '../../desk/parting.ts';
import type { Outing } from '../../engine/outing/types.ts';
import { partingScene, partingStage } from '../../views/parting.ts';
import { partingTable, playTable, playWords } from '../../views/tables/parting.ts';
import type { Voice } from '../../words/voice.ts';
import { type Command, common, type Outcome, UsageFault, voiceOf } from '../command.ts';
import { asksRecords } from '../gate.ts';
import { placeOf, speedOf } from '../open.ts';
import { drawInto, findingsText, paragraphs, tableText } from '../text.ts';

interface Given {
  readonly behind?: string;
  readonly at?: string;
  readonly speed?: string;
  readonly unchained?: boolean;
  readonly svg?: string;
}

export const partingCommand: Command = {
  name: 'parting',
  declare: (program, run) => {
    asksRecords(common(program.command('parting <outing>')))
      .description('What becomes of head and tail if the train parts: every gap and place, or one in time.')
      .option('--behind <vehicle>', 'follow one parting: its name, id or number from the front')
      .option('--at <chainage>', "with --behind: where the train's head is; absent: the worst place")
      .option('--speed <speed>', 'speed at the parting; absent: the running speed; 0 mph: standing')
      .option('--unchained', 'with --behind: as if no chain had been hung there')
      .option('--svg <file>', 'draw the map into a file')
      .action((path, options) =>
        run(async (gate) => {
          const outing = await gate.outing(path);
          return answer(outing, voiceOf(options, outing), options);
        }, options),
      );
  },
};

async function answer(outing: Outing, voice: Voice, given: Given): Promise<Outcome> {
  if (outing.train.vehicles.length < 2) {
    return { text: 'One vehicle by itself cannot part.', json: { gaps: [] }, exit: 0 };
  }
  const speed = given.speed === undefined ? undefined : speedOf(given.speed, '--speed');
  const partings = openPartings(outing);
  const look = partings.look(speed === undefined ? {} : { speed });
  const play =
    given.behind === undefined || look.gaps.length === 0
      ? undefined
      : partings.play(playAsk(voice, look, given, given.behind, speed));
  const drawn = given.svg && look.gaps.length > 0 ? [await draw(given.svg, outing, look, play, voice)] : [];
  const text = play ? playText(look, play, voice) : mapText(look, voice);
  return {
    text: paragraphs([...text, ...drawn]),
    json: play ? playJson(play) : mapJson(look),
    exit: look.findings.some((f) => f.severity === 'forbids') ? 20 : 0,
  };
}

function playAsk(
  voice: Voice,
  look: PartingLook,
  given: Given,
  behind: string,
  speed: number | undefined,
): PlayAsk {
  const gap = gapOf(voice.outing, behind);
  return {
    gap,
    at: given.at === undefined ? look.gaps[gap].worst.at : placeOf(given.at, '--at', voice),
    ...(speed === undefined ? {} : { speed }),
    ...(given.unchained ? { chained: false } : {}),
  };
}

/** The vehicle ahead of the gap, by name, id or number. */
function gapOf({ train: { vehicles } }: Outing, behind: string): number {
  const wanted = behind.toLowerCase();
  const named = vehicles.findIndex((v) => v.name.toLowerCase() === wanted || v.id.toLowerCase() === wanted);
  const gap = named >= 0 ? named : Number(behind) - 1;
  if (Number.isInteger(gap) && gap >= 0 && gap < vehicles.length - 1) return gap;
  const names = vehicles.slice(0, -1).map((v, i) => `${i + 1} ${v.name}`);
  throw new UsageFault(`--behind: found ${behind}; expected one of ${names.join(', ')}`);
}

const mapText = (look: PartingLook, voice: Voice): string[] => [
  ...(look.gaps.length > 0 ? [tableText(partingTable(look, voice))] : []),
  findingsText(look.findings, voice),
];

const playText = (look: PartingLook, play: PartingPlay, voice: Voice): string[] => [
  playWords(play, look.gaps[play.gap], voice).join('\n'),
  tableText(playTable(play, voice)),
];

async function draw(
  file: string,
  outing: Outing,
  look: PartingLook,
  play: PartingPlay | undefined,
  voice: Voice,
): Promise<string> {
  const view = { width: 1200, from: 0, to: outing.line.length, textSize: 13 };
  const stage = partingStage(outing, look.gaps.length, view);
  const shown = play ? { play, time: play.duration } : undefined;
  return drawInto(file, partingScene(stage, look, voice, shown));
}

const mapJson = (look: PartingLook): unknown => ({
  gaps: look.gaps.map(({ gap, chain, worst, shares, places, ...rest }) => ({
    gap,
    chain,
    ...(rest.held ? { held: rest.held } : {}),
    worst,
    shares,
    stretches: stretchesOf({ gap, chain, worst, shares, places, ...rest }),
  })),
  findings: look.findings,
});

const playJson = ({ head, tail, ...play }: PartingPlay): unknown => {
  const half = ({ time, front, speed, ...rest }: PartingPlay['head']): unknown => ({
    ...rest,
    time: [...time],
    front: [...front],
    speed: [...speed],
  });
  return { ...play, head: half(head), tail: half(tail) };
};
