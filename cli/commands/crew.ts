/** heedway crew: who works this train, signed off for what, how long at it, and who else could. */
import { asHostRules, publishedHours } from '../../data/hours-rules.ts';
import { type CrewSheet, crewSheet } from '../../desk/crew.ts';
import { verdictOf } from '../../engine/answer/verdict.ts';
import { tellVerdict } from '../../words/verdict.ts';
import { trade, type Voice } from '../../words/voice.ts';
import { type Command, common, exitOf, type Options, type Outcome, UsageFault, voiceOf } from '../command.ts';
import { openAsked } from '../open-asked.ts';
import { shownFrom } from '../shown.ts';
import { findingsText, table, tellFully } from '../text.ts';

interface CrewOptions extends Options {
  readonly records?: string;
  readonly limits?: true;
}

export const crewCommand: Command = {
  name: 'crew',
  declare: (program, run) => {
    common(program.command('crew [outing]'))
      .description('Who works this train: signed off, hours, yes or no, and who else could.')
      .option('--records <file>', 'with what is recorded there of people and hours')
      .option('--limits', 'published limits of hours, as rules that a host may take over')
      .action((path: string | undefined, options: CrewOptions) =>
        run(() => (options.limits ? limits() : crew(path, options)), options),
      );
  },
};

/** Nobody's until a host takes them over. */
const limits = async (): Promise<Outcome> => ({
  text: publishedHours
    .map((row) => `${row.name}: ${row.source}\n${JSON.stringify(asHostRules(row), null, 2)}`)
    .join('\n\n'),
  json: publishedHours.map((row) => ({ ...row, rules: asHostRules(row) })),
  exit: 0,
});

async function crew(path: string | undefined, options: CrewOptions): Promise<Outcome> {
  if (path === undefined) throw new UsageFault('found no outing; expected one, or --limits');
  const { paper, outing } = await shownFrom(options.records, await openAsked(path));
  const voice = voiceOf(options, outing);
  const sheet = crewSheet(paper, outing, voice);
  const verdict = verdictOf(sheet.findings);
  return {
    text: [...peopleText(sheet, voice), ...signalsText(sheet, voice), ...wayText(sheet, voice)].join('\n'),
    json: { ...sheet, verdict, findings: sheet.findings.map((finding) => tellFully(finding, voice)) },
    exit: exitOf[verdict],
  };
}

function peopleText({ people, dress, dressExample }: CrewSheet, voice: Voice): string[] {
  if (people.length === 0) return ['Nobody is named who works this train: riders with a duty, and crew.'];
  const word = (duty: string): string => (duty === 'guard' ? trade(voice.wording, 'conductor') : duty);
  const rows = people.map(({ name, does, hours, says, could, signedOff }) => [
    name,
    could.length === 0 ? does : `${does}; could: ${could.map(word).join(', ')}`,
    signedOff.join('; ') || '–',
    hours || '–',
    says || '–',
  ]);
  return [
    table([['who', 'does', 'signed off', 'hours', 'says'], ...rows]),
    `Wear: ${dress}${dressExample ? ' (An example: the host’s own words win.)' : ''}`,
  ];
}

function signalsText({ signals, signalsToday }: CrewSheet, { wording }: Voice): string[] {
  if (signals.length === 0 && signalsToday === undefined) return [];
  return [
    '',
    `Signals of ${trade(wording, 'conductor')} and driver: ${signalsToday ?? ''}`.trimEnd(),
    ...signals.map(({ signal, means }) => `- ${signal}: ${means}`),
  ];
}

function wayText({ findings }: CrewSheet, voice: Voice): string[] {
  if (findings.length === 0) return ['', 'Nothing of the people is in the way.'];
  return ['', `${tellVerdict(verdictOf(findings))}, of the people alone:`, findingsText(findings, voice)];
}
