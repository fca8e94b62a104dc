/** The command line: heedway <command> … */
import { CommanderError, Command as Program } from 'commander';
import { plain } from '../engine/base/letters.ts';
import { type Command, type Run, UsageFault } from './command.ts';
import { balanceCommand } from './commands/balance.ts';
import { boardCommand } from './commands/board.ts';
import { brakeDesignCommand } from './commands/brake-design.ts';
import { brakesCommand } from './commands/brakes.ts';
import { bundleCommand } from './commands/bundle.ts';
import { cardCommand } from './commands/card.ts';
import { carsCommand } from './commands/cars.ts';
import { chainsCommand } from './commands/chains.ts';
import { checkCommand } from './commands/check.ts';
import { clearCommand } from './commands/clear.ts';
import { couplersCommand } from './commands/couplers.ts';
import { crewCommand } from './commands/crew.ts';
import { dueCommand } from './commands/due.ts';
import { evidenceCommand } from './commands/evidence.ts';
import { failuresCommand } from './commands/failures.ts';
import { findCommand } from './commands/find.ts';
import { fitCommand } from './commands/fit.ts';
import { flagCommand } from './commands/flag.ts';
import { incidentCommand } from './commands/incident.ts';
import { inspectCommand } from './commands/inspect.ts';
import { ladderCommand } from './commands/ladder.ts';
import { leanCommand } from './commands/lean.ts';
import { arriveCommand, leaveCommand, replayCommand } from './commands/leave.ts';
import { measureCommand } from './commands/measure.ts';
import { newCommand } from './commands/new.ts';
import { openCommand } from './commands/open.ts';
import { partingCommand } from './commands/parting.ts';
import { recordsCommand, verifyCommand } from './commands/records.ts';
import { seatHeightCommand } from './commands/seat-height.ts';
import { seatingCommand } from './commands/seating.ts';
import { sidingCommand } from './commands/siding.ts';
import { speedsCommand } from './commands/speeds.ts';
import { stopCommand } from './commands/stop.ts';
import { sumCommand } from './commands/sum.ts';
import { surveyCommand } from './commands/survey.ts';
import { twistCommand } from './commands/twist.ts';
import { openGate } from './gate.ts';
import { program as version } from './versions.ts';

/** The whole table. */
export const commands: readonly Command[] = [
  newCommand,
  checkCommand,
  ladderCommand,
  stopCommand,
  carsCommand,
  speedsCommand,
  cardCommand,
  bundleCommand,
  openCommand,
  brakesCommand,
  brakeDesignCommand,
  balanceCommand,
  couplersCommand,
  fitCommand,
  clearCommand,
  sidingCommand,
  chainsCommand,
  partingCommand,
  failuresCommand,
  flagCommand,
  seatingCommand,
  seatHeightCommand,
  leanCommand,
  twistCommand,
  measureCommand,
  surveyCommand,
  crewCommand,
  boardCommand,
  leaveCommand,
  arriveCommand,
  replayCommand,
  inspectCommand,
  incidentCommand,
  dueCommand,
  recordsCommand,
  evidenceCommand,
  verifyCommand,
  sumCommand,
  findCommand,
];

const run: Run = async (action, options) => {
  if (!['imperial', 'metric'].includes(options.units)) {
    throw new UsageFault(`--units, or HEEDWAY_UNITS: found ${options.units}; expected imperial or metric`);
  }
  if (!['us', 'uk'].includes(options.wording)) {
    throw new UsageFault(`--wording, or HEEDWAY_WORDING: found ${options.wording}; expected us or uk`);
  }
  const { gate, lines, json } = openGate(options);
  const outcome = await action(gate);
  const over = lines().join('\n');
  // What is read by programs, or is a file, stays what it is: what is said of the records stands beside it.
  if (over !== '' && (options.json || outcome.bare)) onto(process.stderr)(`${over}\n`);
  const text = outcome.bare || over === '' ? outcome.text : `${over}\n\n${outcome.text}`;
  print(options.json ? JSON.stringify(withRecords(outcome.json, json()), undefined, 2) : text);
  process.exitCode = outcome.exit;
};

const withRecords = (json: unknown, records: unknown): unknown =>
  records === undefined || typeof json !== 'object' || json === null || Array.isArray(json)
    ? json
    : { records, ...json };

/** All that is said goes through here: no name in it is obeyed by the terminal. */
const onto = (stream: NodeJS.WriteStream) => (text: string) => void stream.write(plain(text));

const print = (text: string): void => onto(process.stdout)(`${text}\n`);

export async function main(argv: readonly string[]): Promise<void> {
  const program = new Program('heedway')
    .description('May this train leave? The computation behind the answer for ridable miniature railways.')
    .version(version)
    .showHelpAfterError('(heedway help <command> tells more)')
    .configureOutput({ writeOut: onto(process.stdout), writeErr: onto(process.stderr) })
    .exitOverride();
  for (const command of commands) command.declare(program, run);
  withoutExit(program);
  const json = argv.includes('--json');
  try {
    await program.parseAsync([...argv], { from: 'user' });
  } catch (error) {
    process.exitCode = fault(error, json);
  }
}

/** Of commands within commands too. */
function withoutExit(program: Program): void {
  for (const sub of program.commands) withoutExit(sub.exitOverride());
}

/** Whatever went wrong, in words; a stack trace never. */
function fault(error: unknown, json: boolean): number {
  if (error instanceof CommanderError) return error.exitCode === 0 ? 0 : 2;
  const message = error instanceof Error ? error.message : String(error);
  if (error instanceof UsageFault) {
    if (json) print(JSON.stringify({ error: message, problems: error.problems }, undefined, 2));
    else onto(process.stderr)(`${message}\n`);
    return 2;
  }
  onto(process.stderr)(
    `heedway met a fault of its own: ${message}\nPlease report it with the files that led to it.\n`,
  );
  return 70;
}
