/**
 * One person at the workbench: opening, editing, trying, printing, loading again, killing page and worker, a second tab,
 * in any order. No paper has another word than the command line for the same outing, and nothing that was written is
 * lost. A sitting begins where the one before it ended, in the page that stands there: what happens is the longer story,
 * and a page is not loaded for nothing.
 */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, type BrowserContext, expect, type Page } from '@playwright/test';
import { type Chance, chanceOf } from '../../attack/mutate.ts';
import { bundled } from '../../support/bundled.ts';
import { examplePaper } from '../../support/papers.ts';
import {
  catchFiles,
  enter,
  keptIn,
  mortalWorkers,
  openExample,
  openFile,
  planSpeed,
  printed,
  rename,
  setRail,
  tryFirst,
  word,
  workersDie,
} from './workbench.ts';

type Json = Record<string, unknown>;

const examples = ['Steam with light cars', 'Battery engine, vacuum brakes', 'Too long on a wet rail'];

/** On a line of one garden, which is reckoned at once: one that may go, one that may not, one of which nobody can tell. */
async function garden(name: string, more: Json = {}): Promise<Json> {
  const paper = await examplePaper(name);
  const { gauge } = paper['line'] as Json;
  const profile = [
    { at: '0 ft', height: '0 ft' },
    { at: '160 ft', height: '0.4 ft' },
  ];
  const line = { heedway: 'line', version: 1, name: 'Garden', gauge, shape: 'point-to-point', profile };
  return { ...paper, line, ...more };
}

const rejected = { of: 'Garden', what: 'a broken rail', rejects: true, since: '2026-05-30' };
const own = await Promise.all([
  garden('steam-light'),
  garden('steam-light', { defects: [rejected] }),
  garden('brake-not-measured'),
]);

const words = new Map<string, string>();
const { cliWord } = await bundled<typeof import('./cli-word.ts')>('../web/support/cli-word.ts');
const folder = mkdtempSync(join(tmpdir(), 'sittings-'));
process.once('exit', () => rmSync(folder, { recursive: true, force: true }));

/** The word of the command line; whatever the outing is called, it is the same. */
async function wordOf(file: string): Promise<string> {
  const json = JSON.parse(file) as Json;
  if (json['heedway'] === 'tried') (json['outing'] as Json)['name'] = 'any';
  else json['name'] = 'any';
  const text = JSON.stringify(json);
  const known = words.get(text);
  if (known !== undefined) return known;
  const path = join(folder, `${words.size}.json`);
  writeFileSync(path, text);
  const word = await cliWord(path);
  words.set(text, word);
  return word;
}

/** What was written last, by field. */
type Written = Partial<Record<'name' | 'speed' | 'rail', string>>;

const writtenIn = (paper: Json): Written => ({
  name: String(paper['name']),
  speed: String(paper['plannedSpeed']),
  rail: String((paper['conditions'] as Json)['railState']),
});

/** What was looked at. */
export interface Looked {
  sittings: number;
  steps: number;
  /** Words on paper and screen that were held against the command line's. */
  words: number;
  /** Edits that had to be there in the end. */
  edits: number;
  /** Sittings that a busy machine kept waiting too long, and that were held once more. */
  again: number;
}

/** One browser with what it keeps, and the tabs that stand open in it. */
class Desk {
  readonly tabs: Page[] = [];
  at = 0;
  readonly context: BrowserContext;
  readonly #url: string;

  constructor(context: BrowserContext, url: string) {
    this.context = context;
    this.#url = url;
  }

  get page(): Page {
    return this.tabs[this.at];
  }

  async open(): Promise<void> {
    const page = await this.context.newPage();
    await mortalWorkers(page);
    await catchFiles(page);
    await enter(page, this.#url, 'papers');
    this.tabs.push(page);
    this.at = this.tabs.length - 1;
  }

  async closeAt(index: number): Promise<void> {
    const [gone] = this.tabs.splice(index, 1);
    this.at = 0;
    await gone.close({ runBeforeUnload: false });
  }
}

class Sitting {
  readonly log: string[] = [];
  #written: Written = {};
  /** Papers that were written on, and then put away for another. */
  readonly #away: Written[] = [];
  readonly #chance: Chance;
  readonly #looked: Looked;
  readonly plan: readonly string[];
  #desk: Desk | undefined;

  constructor(seed: number, looked: Looked) {
    this.#chance = chanceOf(seed);
    this.#looked = looked;
    this.plan = Array.from({ length: 3 + this.#chance.index(6) }, () =>
      this.#chance.one(Object.keys(this.#steps)),
    );
  }

  get #at(): Desk {
    if (!this.#desk) throw new Error('nobody sits here');
    return this.#desk;
  }

  get #page(): Page {
    return this.#at.page;
  }

  async sit(desk: Desk): Promise<void> {
    this.#desk = desk;
    if (desk.tabs.length === 0) await desk.open();
    for (const which of this.plan) {
      this.log.push(which);
      await this.#steps[which]();
      this.#looked.steps++;
    }
    await this.end();
    this.#looked.sittings++;
  }

  #replaced(): void {
    if (Object.keys(this.#written).length > 0) this.#away.push(this.#written);
    this.#written = {};
  }

  readonly #steps: Readonly<Record<string, () => Promise<void>>> = {
    example: async () => {
      await openExample(this.#page, this.#chance.one(examples));
      this.#replaced();
    },
    file: async () => {
      const name = `File ${this.#chance.index(1e9)}`;
      await openFile(this.#page, { ...this.#chance.one(own), name }, `${name}.json`);
      this.#replaced();
      this.#written = { name };
    },
    rename: async () => {
      const name = `Outing ${this.#chance.index(1e9)}`;
      await rename(this.#page, name);
      this.#written['name'] = name;
    },
    speed: async () => {
      // As in none of the examples: what stands there already is nothing that is written.
      const speed = this.#chance.one(['2.5 mph', '3.5 mph']);
      await planSpeed(this.#page, speed);
      this.#written.speed = speed;
    },
    rail: async () => {
      const rail = this.#chance.one(['damp', 'greasy']);
      await setRail(this.#page, rail);
      this.#written.rail = rail;
    },
    try: async () => void (await tryFirst(this.#page)),
    // At once, and when there is a word.
    print: () => this.print(),
    'print the word': () => this.printWord(),
    reload: async () => {
      await this.#page.reload();
      await expect(word(this.#page)).toBeVisible();
    },
    kill: async () => {
      await this.#at.closeAt(this.#at.at);
      if (this.#at.tabs.length === 0) await this.#at.open();
    },
    worker: async () => {
      const page = this.#page;
      await workersDie(page, true);
      await this.#steps['rail']();
      await this.print();
      await workersDie(page, false);
    },
    tab: async () => {
      if (this.#at.tabs.length < 2) await this.#at.open();
      else this.#at.at = 1 - this.#at.at;
    },
  };

  async #agrees(word: string, file: string): Promise<void> {
    expect(word, this.log.join(' ')).toBe(await wordOf(file));
    this.#looked.words++;
  }

  async print(): Promise<void> {
    const paper = await printed(this.#page);
    if (paper) await this.#agrees(paper.word, paper.file);
  }

  /** A card of what is open now. */
  async printWord(): Promise<void> {
    const said = this.#page.locator('.verdict:not(.none)');
    // Where whoever reckons has died there is no word before somebody asks for it.
    const again = this.#page.getByRole('button', { name: 'Ask again' });
    await expect(said.or(again)).toBeVisible({ timeout: 60_000 });
    if (await again.isVisible()) await again.dispatchEvent('click');
    await expect(said).toHaveCount(1, { timeout: 60_000 });
    const paper = await printed(this.#page);
    expect(paper, this.log.join(' ')).toBeDefined();
    if (paper) await this.#agrees(paper.word, paper.file);
  }

  /** All that was written is there, and the word on the screen is that of what is kept. */
  async end(): Promise<void> {
    const page = this.#page;
    const log = this.log.join(' ');
    await page.reload();
    await expect(page.locator('.verdict:not(.none)'), log).toHaveCount(1, { timeout: 60_000 });
    const kept = (await keptIn(page, 'heedway', 'session', 'paper')) as Json;
    expect(writtenIn(kept), log).toMatchObject(this.#written);
    const said = (await word(page).textContent())?.replace(/ looking for remedies$/, '');
    await this.#agrees(String(said), JSON.stringify(kept));
    await this.printWord();
    const shelf = ((await keptIn(page, 'heedway-shelf', 'papers', 'outings')) ?? []) as Json[];
    for (const away of this.#away)
      expect(shelf.map(writtenIn), `${log}: put away`).toContainEqual(expect.objectContaining(away));
    this.#looked.edits += [this.#written, ...this.#away].flatMap((of) => Object.keys(of)).length;
    if (this.#at.tabs.length > 1) await this.#at.closeAt(1 - this.#at.tabs.indexOf(page));
  }
}

/** Sittings of one browser before it is put away with all that it keeps. */
const TOGETHER = 25;

/** It did not come in time. Whatever does not come the second time, in a browser of its own, hangs. */
const WAITED = /Timeout:? \d+ ?ms/;

/** Where the pages are served; counts and remedies, which come after the word, take most of a processor. */
export interface Addresses {
  readonly whole: () => string;
  /** Without them: for whoever tries nothing and looks at neither. */
  readonly brief: () => string;
}

/**
 * Sittings by their numbers, one after the other.
 *
 * @param goes asked before each whether there is time for it
 */
export async function sittings(
  browser: Browser,
  addresses: Addresses,
  numbers: readonly number[],
  goes: () => boolean = () => true,
): Promise<{ readonly looked: Looked; readonly faults: readonly string[] }> {
  const looked: Looked = { sittings: 0, steps: 0, words: 0, edits: 0, again: 0 };
  const faults: string[] = [];
  let desks = new Map<string, Desk>();
  const putAway = async (): Promise<void> => {
    for (const { context } of desks.values()) await context.close();
    desks = new Map();
  };
  /** What was wrong, if anything was. */
  const held = async (seed: number): Promise<string | undefined> => {
    const sitting = new Sitting(seed, looked);
    const url = sitting.plan.includes('try') ? addresses.whole() : addresses.brief();
    const desk = desks.get(url) ?? new Desk(await browser.newContext({ serviceWorkers: 'block' }), url);
    desks.set(url, desk);
    try {
      await sitting.sit(desk);
      return undefined;
    } catch (fault) {
      return `sitting ${seed}: ${sitting.log.join(' ')}: ${fault instanceof Error ? fault.message : fault}`;
    }
  };
  for (const [i, seed] of numbers.entries()) {
    if (!goes()) break;
    if (i % TOGETHER === 0) await putAway();
    let fault = await held(seed);
    if (fault !== undefined) await putAway();
    if (fault !== undefined && WAITED.test(fault)) {
      looked.again++;
      console.log(`once more: ${fault}`);
      fault = await held(seed);
      if (fault !== undefined) await putAway();
    }
    if (fault !== undefined) {
      faults.push(fault);
      console.log(fault);
    }
  }
  await putAway();
  return { looked, faults };
}
