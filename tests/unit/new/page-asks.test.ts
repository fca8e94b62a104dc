/** Page and terminal ask the same in the same words: every choice of every kind, both read from the one list. */
import { expect, it } from 'vitest';
import type { FieldKey, Replies } from '../../../desk/new/field.ts';
import { grow } from '../../../desk/new/make.ts';
import { askedIn, fieldKeys, fieldOf, questions } from '../../../desk/new/questions.ts';
import { brakeKinds, isThrough } from '../../../engine/things/brake/kinds/index.ts';
import { inWording } from '../../../words/voice.ts';
import { heedway } from '../../support/cli.ts';
import { all } from '../../support/four-replies.ts';

const choice = (key: FieldKey): readonly string[] => {
  const field = fieldOf(key);
  return field.form === 'choice' ? field.values : [];
};

it('every option of the terminal is a field of the page, with the same choices', () => {
  const { stdout } = heedway('new', '--help');
  const help = stdout.replace(/\s+/g, ' ');
  for (const key of fieldKeys) {
    const field = fieldOf(key);
    const takes = { choice: 'word', figure: 'figure', text: 'text' }[field.form];
    expect(help, key).toContain(`--${field.flag} <${takes}>`);
    if (field.form === 'choice')
      expect(help, key).toContain(`${inWording(field.label, 'us')}: ${field.values.join(', ')}`);
    expect(
      questions.some(({ id }) => askedIn(id, { ...all, 'engine.kind': 'steam' }).includes(key)) ||
        questions.some(({ id }) => askedIn(id, { ...all, 'cars.brake': 'hand' }).includes(key)) ||
        questions.some(({ id }) => askedIn(id, { ...all, 'engine.holds': 'no' }).includes(key)),
      key,
    ).toBe(true);
  }
});

it('every brake that runs through a train can be chosen for every kind of engine', () => {
  for (const kind of brakeKinds.filter(isThrough))
    expect(choice('cars.brake')).toContain(kind.replace('-', ' '));
  const { 'engine.pull': _, ...unpulled } = all;
  for (const engine of choice('engine.kind'))
    for (const brake of choice('cars.brake'))
      for (const shape of choice('line.shape')) {
        const replies: Replies = {
          ...(engine === 'steam' ? unpulled : all),
          ...(engine === 'steam'
            ? {
                'engine.cylinders': '2',
                'engine.bore': '2',
                'engine.stroke': '3',
                'engine.wheel': '8',
                'engine.pressure': '90',
              }
            : {}),
          'engine.kind': engine,
          'cars.brake': brake,
          'line.shape': shape,
        };
        const { paper, faults, missing } = grow(replies, 'imperial');
        const what = `${engine}, ${brake}, ${shape}`;
        expect(faults, what).toEqual([]);
        expect(missing, what).toEqual([]);
        const text = JSON.stringify(paper);
        expect(text, what).toContain(engine === 'steam' ? '"kind":"steam"' : '"kind":"drawbar"');
        const through = brakeKinds.some((kind) => isThrough(kind) && kind.replace('-', ' ') === brake);
        if (through) expect(text, what).toContain(`"kind":"${brake.replace(' ', '-')}"`);
        if (through) expect(text, what).toContain(`"supplies":["${brake.replace(' ', '-')}"]`);
        if (brake === 'hand') expect(text, what).toContain('"name":"hand brake"');
      }
});
