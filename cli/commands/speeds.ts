/** heedway speeds: how fast at each place, and why. */

import { actLines, drivenRows } from '../../desk/driven.ts';
import { lightLines, lightStretches } from '../../desk/light-wheels.ts';
import { answerOuting } from '../../engine/answer/complete.ts';
import type { Answer } from '../../engine/answer/types.ts';
import { FOOT, MPH } from '../../engine/base/constants.ts';
import type { WheelMap } from '../../engine/questions/balance/wheel-map.ts';
import type { Driven, SpeedMap } from '../../engine/questions/speed/types.ts';
import { planSvg } from '../../views/plan/svg.ts';
import { NO_PLAN } from '../../views/plan/words.ts';
import { stripSvg } from '../../views/strip/svg.ts';
import { notToRun } from '../../words/verdict.ts';
import type { Voice } from '../../words/voice.ts';
import { type Command, common, exitOf, finite, type Options, voiceOf } from '../command.ts';
import { asksRecords } from '../gate.ts';
import { findingsText, table } from '../text.ts';
import { writeOut } from '../write.ts';

interface SpeedOptions extends Options {
  readonly csv?: boolean;
  readonly svg?: string;
  readonly plan?: string;
}

export const speedsCommand: Command = {
  name: 'speeds',
  declare: (program, run) => {
    asksRecords(common(program.command('speeds <outing>')))
      .description('How fast at each place, and which reason sets it there.')
      .option('--csv', 'every half metre, as CSV')
      .option('--svg <file>', 'draw the strip into a file')
      .option('--plan <file>', 'draw the line from above into a file')
      .action((path: string, options: SpeedOptions) =>
        run(async (gate) => {
          const outing = await gate.outing(path);
          const answer = answerOuting(outing, { remedies: false, counts: false });
          const voice = voiceOf(options, outing);
          const map = answer.speeds;
          const stays = notToRun(answer.verdict);
          if (!map) {
            const faults = answer.findings.filter((f) => f.code === 'question-failed');
            return {
              text: findingsText(faults, voice),
              json: { findings: faults },
              exit: exitOf[answer.verdict],
            };
          }
          if (options.svg) await writeOut(options.svg, stripSvg(outing, answer, voice));
          const plan = options.plan === undefined ? undefined : planSvg(outing, answer, voice);
          if (options.plan !== undefined && plan !== undefined) await writeOut(options.plan, plan);
          const drawn = [
            ...(options.svg ? [`Strip drawn into ${options.svg}`] : []),
            ...(options.plan ? [plan ? `Plan drawn into ${options.plan}` : NO_PLAN] : []),
          ];
          const text = options.csv
            ? mapCsv(map, voice)
            : `${stays === '' ? '' : `${stays}\n\n`}${zonesTable(answer, voice)}\n\n${brakingText(answer, voice)}\n\n${lightText(answer.wheels, voice)}`;
          return {
            ...(options.csv ? { bare: true } : {}),
            text: [text, ...drawn].join('\n\n'),
            json: {
              notToRun: stays,
              ...mapJson(map, answer),
              driven: drivenJson(answer),
              wheels: wheelJson(answer.wheels),
            },
            exit: 0,
          };
        }, options),
      );
  },
};

function zonesTable(answer: Answer, voice: Voice): string {
  return table([
    ['from', 'to', 'at most', 'no faster than', 'cautious stop', 'gap', 'because of'],
    ...drivenRows(answer, voice).map((r) => [r.from, r.to, r.speed, r.posts, r.cautiousStop, r.gap, r.why]),
  ]);
}

function mapCsv(map: SpeedMap, voice: Voice): string {
  const [long, fast] = voice.system === 'imperial' ? [FOOT, MPH] : [1, 1 / 3.6];
  const [u, w] = voice.system === 'imperial' ? ['ft', 'mph'] : ['m', 'km/h'];
  const up = (x: number): string =>
    Number.isFinite(x) ? (Math.ceil((x / long) * 100) / 100).toFixed(2) : 'does not stop';
  const rows = Array.from(map.at, (at, j) =>
    [
      (at / long).toFixed(2),
      (Math.floor((map.limit[j] / fast) * 1000) / 1000).toFixed(3),
      up(map.likelyStop[j]),
      up(map.cautiousStop[j]),
      up(map.gap[j]),
      map.reasons[map.reason[j]].kind,
      `"${map.reasons[map.reason[j]].what.replace(/"/g, '""')}"`,
    ].join(','),
  );
  return [
    `at (${u}),limit (${w}),likely stop (${u}),cautious stop (${u}),gap (${u}),reason,what`,
    ...rows,
  ].join('\n');
}

function brakingText(answer: Answer, voice: Voice): string {
  const lines = actLines(answer, voice);
  return lines.length === 0
    ? 'No booked stop and no slower zone.'
    : ['Brake', ...lines.map((l) => `  ${l}`)].join('\n');
}

function lightText(wheels: WheelMap, voice: Voice): string {
  const { title, lines } = lightLines(wheels, voice);
  return [title, ...lines.map((line) => `  ${line}`)].join('\n');
}

const mapJson = (map: SpeedMap, { brakingPoints }: Answer): object => ({
  railState: map.railState,
  step: map.step,
  reasons: map.reasons,
  at: Array.from(map.at),
  limit: Array.from(map.limit),
  reason: Array.from(map.reason),
  likelyStop: Array.from(map.likelyStop, (x) => finite(x)),
  cautiousStop: Array.from(map.cautiousStop, (x) => finite(x)),
  gap: Array.from(map.gap, (x) => finite(x)),
  brakingPoints,
});

const drivenJson = ({ driven }: Answer): object | null =>
  driven && {
    imperial: zonesJson(driven.imperial),
    metric: zonesJson(driven.metric),
  };

const zonesJson = ({ step, zones, acts }: Driven): object => ({
  step,
  zones: zones.map((z) => ({ ...z, cautiousStop: finite(z.cautiousStop), gap: finite(z.gap) })),
  acts,
});

const wheelJson = (wheels: WheelMap): object => ({
  ...wheels,
  at: Array.from(wheels.at),
  share: Array.from(wheels.share, (x) => finite(x)),
  by: Array.from(wheels.by),
  light: lightStretches(wheels),
});
