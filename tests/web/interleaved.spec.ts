/**
 * Opening, editing, trying, printing, loading again, killing page and worker, a second tab, in any order: no paper has
 * another word than the command line for the same outing, and nothing that was written is lost.
 */
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type BrowserContext, expect, type Page } from '@playwright/test';
import { type Chance, chanceOf } from '../attack/mutate.ts';
import { bundled } from '../support/bundled.ts';
import { examplePaper } from '../support/papers.ts';
import { runs } from '../support/tier.ts';
import { test } from './demo.ts';
import { served } from './served.ts';
import {
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
} from './support/workbench.ts';

const [whole, brief] = [served('whole'), served('brief')];

type Json = Record<string, unknown>;

const examples = ['Steam with light cars', 'Battery engine, vacuum brakes', 'Too long on a wet rail'];
const own = await Promise.all(['steam-light', 'brake-not-measured'].map(examplePaper));

const folder = mkdtempSync(join(tmpdir(), 'interleaved-'));
const words = new Map<string, string>();

const { cliWord } = await bundled<typeof import('./support/cli-word.ts')>('../web/support/cli-word.ts');

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

/** One person's browser: its tabs, and what must be there in the end. */
class Sitting {
  readonly log: string[] = [];
  #tabs: Page[] = [];
  #at = 0;
  #written: Written = {};
  /** Papers that were written on, and then put away for another. */
  readonly #away: Written[] = [];
  readonly #context: BrowserContext;
  readonly #chance: Chance;
  readonly #plan: readonly string[];

  constructor(context: BrowserContext, chance: Chance) {
    this.#context = context;
    this.#chance = chance;
    this.#plan = Array.from({ length: 3 + chance.index(6) }, () => chance.one(Object.keys(this.#steps)));
  }

  /** Counts and remedies take most of a processor: who tries nothing looks at neither. */
  get #url(): string {
    return this.#plan.includes('try') ? whole() : brief();
  }

  async sit(): Promise<void> {
    await this.open();
    for (const which of this.#plan) {
      this.log.push(which);
      await this.#steps[which]();
    }
    await this.end();
  }

  /** Nothing of a sitting is left for the next. */
  async leave(): Promise<void> {
    const page = await this.#context.newPage();
    const browser = await this.#context.newCDPSession(page);
    const origins = new Set(this.#tabs.map((tab) => new URL(tab.url()).origin));
    for (const tab of this.#tabs) await tab.close({ runBeforeUnload: false });
    for (const origin of origins)
      await browser.send('Storage.clearDataForOrigin', { origin, storageTypes: 'all' });
    await page.close();
  }

  get #page(): Page {
    return this.#tabs[this.#at];
  }

  async open(): Promise<void> {
    const page = await this.#context.newPage();
    await mortalWorkers(page);
    await enter(page, this.#url, 'papers');
    this.#tabs.push(page);
    this.#at = this.#tabs.length - 1;
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
      await this.#page.close({ runBeforeUnload: false });
      this.#tabs = this.#tabs.filter((tab) => tab !== this.#page);
      this.#at = 0;
      if (this.#tabs.length === 0) await this.open();
    },
    worker: async () => {
      const page = this.#page;
      await workersDie(page, true);
      await this.#steps['rail']();
      await this.print();
      await workersDie(page, false);
    },
    tab: async () => {
      if (this.#tabs.length < 2) await this.open();
      else this.#at = 1 - this.#at;
    },
  };

  async print(): Promise<void> {
    const paper = await printed(this.#page);
    if (paper) expect(paper.word, this.log.join(' ')).toBe(await wordOf(paper.file));
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
    if (paper) expect(paper.word, this.log.join(' ')).toBe(await wordOf(paper.file));
  }

  /** All that was written is there, and the word on the screen is that of what is kept. */
  async end(): Promise<void> {
    const page = this.#page;
    const log = this.log.join(' ');
    await page.reload();
    await expect(page.locator('.verdict:not(.none)'), log).toHaveCount(1, { timeout: 30_000 });
    const kept = (await keptIn(page, 'heedway', 'session', 'paper')) as Json;
    expect(writtenIn(kept), log).toMatchObject(this.#written);
    const said = (await word(page).textContent())?.replace(/ looking for remedies$/, '');
    expect(said, log).toBe(await wordOf(JSON.stringify(kept)));
    await this.printWord();
    const shelf = ((await keptIn(page, 'heedway-shelf', 'papers', 'outings')) ?? []) as Json[];
    for (const away of this.#away)
      expect(shelf.map(writtenIn), `${log}: put away`).toContainEqual(expect.objectContaining(away));
  }
}

const writtenIn = (paper: Json): Written => ({
  name: String(paper['name']),
  speed: String(paper['plannedSpeed']),
  rail: String((paper['conditions'] as Json)['railState']),
});

/** Sittings from one seed on, in one test: the browser is started once for all. */
const PIECES = runs(2, 3);
const EACH = Number(process.env['SITTINGS'] ?? runs(1, 334));
const FIRST = Number(process.env['SITTING'] ?? 1);

for (let piece = 0; piece < PIECES; piece++) {
  const from = FIRST + piece * EACH;
  test(`whatever comes in between, ${EACH} times from ${from}`, async ({ browser }) => {
    test.setTimeout(EACH * 60_000);
    const faults: string[] = [];
    // One for all: what was loaded and compiled for the first is there for the next.
    const context = await browser.newContext({ serviceWorkers: 'block', acceptDownloads: true });
    for (let seed = from; seed < from + EACH; seed++) {
      const sitting = new Sitting(context, chanceOf(seed));
      try {
        await sitting.sit();
      } catch (fault) {
        faults.push(
          `sitting ${seed}: ${sitting.log.join(' ')}: ${fault instanceof Error ? fault.message : fault}`,
        );
        console.log(faults[faults.length - 1]);
      }
      await sitting.leave();
    }
    await context.close();
    expect(faults).toEqual([]);
  });
}
