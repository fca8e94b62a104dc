/**
 * The pattern of a command. To add one: write `cli/commands/<name>.ts` exporting a `Command`, and list it in
 * `cli/main.ts`. A command returns what it found; printing and exit codes happen here, once.
 */
import type { Command as Program } from 'commander';
import type { Outing } from '../engine/outing/types.ts';
import type { Verdict } from '../engine/questions/finding.ts';
import type { System } from '../units/index.ts';
import type { Voice, Wording } from '../words/voice.ts';
import type { Gate } from './gate.ts';

export interface Options {
  readonly json?: boolean;
  readonly units: System;
  readonly wording: Wording;
}

export interface RecordsFlag {
  /** The store of records by name; false: none is asked; absent: the one that lies at hand. */
  readonly records?: string | false;
}

export interface Outcome {
  /** For people; lines joined by newlines. */
  readonly text: string;
  /** The same for programs. */
  readonly json: unknown;
  /** The text is a file: nothing may stand over it. */
  readonly bare?: boolean;
  readonly exit: number;
}

export interface Command {
  readonly name: string;
  /** Declares arguments and options on the program and calls `run` with what the action returns. */
  readonly declare: (program: Program, run: Run) => void;
}

/** @param action gets its outings by the gate: with what is recorded of them */
export type Run = (action: (gate: Gate) => Promise<Outcome>, options: Options & RecordsFlag) => Promise<void>;

export const exitOf: Readonly<Record<Verdict, number>> = { go: 0, limits: 10, hold: 20, unknown: 30 };

/** A fault of what was typed or of a file: exit 2, no stack. */
export class UsageFault extends Error {
  readonly problems: readonly unknown[];

  constructor(message: string, problems: readonly unknown[] = []) {
    super(message);
    this.problems = problems;
  }
}

/** JSON has no Infinity: what never comes is null. */
export const finite = (x: number | undefined): number | null =>
  x !== undefined && Number.isFinite(x) ? x : null;

export const voiceOf = (options: Options, outing: Outing): Voice => ({
  system: options.units,
  wording: options.wording,
  outing,
});

/** Options that every command takes; who always writes in metric, or reads UK words, says so once for all. */
export const common = (program: Program): Program =>
  program
    .option('--json', 'print JSON for programs')
    .addOption(
      program.createOption('--units <system>', 'imperial or metric').default('imperial').env('HEEDWAY_UNITS'),
    )
    .addOption(program.createOption('--wording <wording>', 'us or uk').default('us').env('HEEDWAY_WORDING'));
