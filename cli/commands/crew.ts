/** heedway crew: who works this train, signed off for what, how long at it, and who else could. */
import { asHostRules, publishedHours } from '../../data/hours-rules.ts';
import { type CrewSheet, crewSheet } from '../../desk/crew.ts';
import { verdictOf } from '../../engine/answer/verdict.ts';
import { turnWords } from '../../papers/record/fields.ts';
import { personNamed } from '../../records/names.ts';
import { shownTime } from '../../records/time.ts';
import { refused, turns } from '../../records/turns.ts';
import { ON_THE_GROUND } from '../../words/crew.ts';
import { shortHash, turnTold } from '../../words/records/record.ts';
import { tellVerdict } from '../../words/verdict.ts';
import { trade, type Voice } from '../../words/voice.ts';
import { type Command, common, exitOf, type Options, type Outcome, UsageFault, voiceOf } from '../command.ts';
import { asksRecords, type Gate } from '../gate.ts';
import { inStore, lookAt, record, type StoreOptions, storeOption, timeSaid } from '../records.ts';
import { findingsText, table, tellFully } from '../text.ts';

interface TurnOptions extends Options, StoreOptions {
  readonly person: string;
  readonly freeSince?: string;
  readonly said?: string;
}

export const crewCommand: Command = {
  name: 'crew',
  declare: (program, run) => {
    const crew = program.command('crew').description('Who works this train, and who else could.');
    asksRecords(common(crew.command('sheet <outing>', { isDefault: true })))
      .description('Signed off for what, hours, yes or no, who else could, and what is in the way.')
      .action((path: string, options: Options) => run((gate) => sheet(gate, path, options), options));
    common(crew.command('limits'))
      .description('Published limits of hours, as rules that a host may take over: nobody’s until then.')
      .action((options: Options) => run(limits, options));
    storeOption(common(crew.command('turn <what>')))
      .description(`Signs ${turnWords.join(', ')}: a turn of duty, recorded.`)
      .requiredOption('--person <name>', 'who: the name stands apart')
      .option('--free-since <time>', 'signing on: since when without work, elsewhere neither')
      .option('--said <time>', 'when, as 2026-05-31T08:00; now, if nothing is said')
      .action((what: string, options: TurnOptions) => run(() => turn(what, options), options));
  },
};

/** The next thing of a turn, of somebody who may say it: off of one who is on, back of one who has a break. */
const turn = (what: string, options: TurnOptions): Promise<Outcome> =>
  inStore(options, async (store) => {
    if (!isTurnWord(what)) throw new UsageFault(`found ${what}; expected ${turnWords.join(', ')}`);
    const said = timeSaid(options.said);
    const { person } = await personNamed(store, options.person);
    const mine = turns((await lookAt(store)).entries).get(person) ?? [];
    const fault = refused(what, mine, Date.parse(said));
    if (fault) throw new UsageFault(`${options.person}: ${fault}`);
    const { freeSince } = options;
    const content = { person, what, ...(freeSince === undefined ? {} : { freeSince }) };
    const { row } = await record(store, { kind: 'turn', content, said }, options);
    return {
      text: `${options.person} ${turnTold[what]}, ${shownTime(said)}. Recorded as ${shortHash(row.hash)}.`,
      json: { record: row.hash, ...content },
      exit: 0,
    };
  });

const isTurnWord = (what: string): what is (typeof turnWords)[number] =>
  turnWords.some((word) => word === what);

/** Nobody's until a host takes them over. */
const limits = async (): Promise<Outcome> => ({
  text: publishedHours
    .map((row) => `${row.name}: ${row.source}\n${JSON.stringify(asHostRules(row), null, 2)}`)
    .join('\n\n'),
  json: publishedHours.map((row) => ({ ...row, rules: asHostRules(row) })),
  exit: 0,
});

async function sheet(gate: Gate, path: string, options: Options): Promise<Outcome> {
  const { paper, outing } = await gate.asked(path);
  const voice = voiceOf(options, outing);
  const made = crewSheet(paper, outing, voice);
  const verdict = verdictOf(made.findings);
  return {
    text: [
      ...peopleText(made, voice),
      ...signalsText(made, voice),
      ...groundText(made, voice),
      ...wayText(made, voice),
    ].join('\n'),
    json: {
      ...made,
      verdict,
      ground: made.ground.map((finding) => tellFully(finding, voice)),
      findings: made.findings.map((finding) => tellFully(finding, voice)),
    },
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

const groundText = ({ ground }: CrewSheet, voice: Voice): string[] =>
  ground.length === 0 ? [] : ['', `${ON_THE_GROUND}:`, findingsText(ground, voice)];

function wayText({ findings }: CrewSheet, voice: Voice): string[] {
  if (findings.length === 0) return ['', 'Nothing of the people is in the way.'];
  return ['', `${tellVerdict(verdictOf(findings))}, of the people alone:`, findingsText(findings, voice)];
}
